/** What a machine does, in words. */
import type { Plan } from '../../plan/model';
import { driveWords } from '../text/passes';
import type { MachineNow } from './machine-now';

export function nowWords(plan: Plan, now: MachineNow): string {
  const { doing, pass, machine, leg } = now;
  const own = plan.passes.passes.find((p) => p.machine === machine.id && p.number === pass);
  if (doing === 'to-come') return 'waits off the grass';
  if (doing === 'count') return 'waits for the signed count';
  if (doing === 'done') return 'done, off the grass';
  if (doing === 'pass' && own) return `pass ${own.number}, ${driveWords(own)}`;
  if (leg.phase === 'carry') return 'drives off the grass';
  const way = doing === 'turning' ? (leg.gear === 'reverse' ? 'backs up' : 'turns') : 'runs empty';
  return pass === null ? way : `${way} to pass ${pass}`;
}
