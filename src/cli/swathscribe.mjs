#!/usr/bin/env node
// Starts the TypeScript command line without a build step.
import { register } from 'tsx/esm/api';

register();
await import('./main.ts');
