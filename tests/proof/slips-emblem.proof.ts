import { proveSlips } from './prove-slips';

proveSlips('lantern-emblem');
