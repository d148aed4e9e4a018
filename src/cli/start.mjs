#!/usr/bin/env node
// `npm start`: builds the app, writes the demo packet, serves the app with the demo open.
import { register } from 'tsx/esm/api';

register();
await import('./start.ts');
