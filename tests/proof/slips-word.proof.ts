import { proveSlips } from './prove-slips';

proveSlips('lanterns-word');
