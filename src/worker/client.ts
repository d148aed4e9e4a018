/**
 * The screen's side of the worker. Requests are answered in order; of plan requests only the newest
 * waits, so that a drag never queues stale work.
 */
import type { Result } from '../base/result';
import type { Plan } from '../plan/model';
import type { PlanStep } from '../plan/make-plan';
import type { OperationName, Operations, Progress, Reply, Request } from './protocol';

type Waiting = (result: Result<unknown>) => void;

export interface EngineClient {
  /** Any operation but `plan`. */
  ask<N extends Exclude<OperationName, 'plan'>>(
    operation: N,
    args: Operations[N]['args'],
  ): Promise<Result<Operations[N]['value']>>;
  /** Resolves to null when a newer plan request took this one's place. */
  plan(args: Operations['plan']['args']): Promise<Result<Plan> | null>;
}

/** Whatever can carry messages to the engine: a Worker, or a stand-in in tests. */
export interface Port {
  postMessage(message: unknown): void;
  onmessage: ((event: MessageEvent<Reply | Progress>) => void) | null;
}

/** The engine behind `port`. Of plan requests made while one runs, only the newest is kept. */
export function connectEngine(
  port: Port,
  onStep: (step: PlanStep) => void = () => undefined,
): EngineClient {
  const waiting = new Map<number, Waiting>();
  let nextId = 1;
  let planning = false;
  let pending: { args: Operations['plan']['args']; done: (r: Result<Plan> | null) => void } | null =
    null;

  port.onmessage = (event) => {
    const message = event.data;
    if ('step' in message) return onStep(message.step);
    const done = waiting.get(message.id);
    waiting.delete(message.id);
    done?.(message.result);
  };

  function send<N extends OperationName>(operation: N, args: Operations[N]['args']) {
    const request: Request<N> = { id: nextId++, operation, args };
    return new Promise<Result<Operations[N]['value']>>((resolve) => {
      waiting.set(request.id, resolve as Waiting);
      port.postMessage(request);
    });
  }

  async function runPlans(): Promise<void> {
    if (planning) return;
    planning = true;
    while (pending) {
      const job: NonNullable<typeof pending> = pending;
      pending = null;
      job.done(await send('plan', job.args));
    }
    planning = false;
  }

  return {
    ask: send,
    plan: (args) =>
      new Promise((done) => {
        pending?.done(null);
        pending = { args, done };
        void runPlans();
      }),
  };
}
