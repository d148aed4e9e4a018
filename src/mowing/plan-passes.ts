/** The passes: what is laid out, then driven. */
import { succeed, type Result } from '../base/result';
import { prepareField } from './drive-ground';
import { layOutSwaths } from './lay-out-swaths';
import { layoutProblems } from './layout-problems';
import type { PassPlan } from './model';
import { planRoute, type RouteInput } from './plan-route';

/**
 * Numbered, driven passes of both machines in the order of work, from the design's strokes. Lengths
 * in feet, times in seconds from the start of the visit. Problems: those of `planRoute` and
 * `layoutProblems`.
 */
export function planPasses(input: RouteInput & { readonly toleranceIn: number }): Result<PassPlan> {
  const ground = prepareField(input.field);
  const layout = layOutSwaths(input, ground);
  const route = planRoute(input, layout, ground);
  if (!route.ok) return route;
  return succeed(route.value, [...layoutProblems(layout, input.design), ...route.problems]);
}
