// `npm run -s bench`: how long each step takes, against a yardstick measured in the same run.
import { register } from 'tsx/esm/api';

register();
await import('./plan-steps.ts');
await import('./fit-outline.ts');
await import('./mowing-order.ts');
