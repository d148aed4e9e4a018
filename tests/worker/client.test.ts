import { describe, expect, test } from 'vitest';
import { FONT_CATALOGUE } from '../../src/art/fonts';
import { fail, problem } from '../../src/base/result';
import { defaultProject } from '../../src/project/default-project';
import { connectEngine, type Port } from '../../src/worker/client';
import { wordFontUrl } from '../../src/worker/font-urls';
import { brokenProblem, type Reply, type Request } from '../../src/worker/protocol';

/** A port that only writes down what it is sent; the test answers when it likes. */
function openPort() {
  const sent: Request[] = [];
  const port: Port = { postMessage: (m) => sent.push(m as Request), onmessage: null };
  const answer = (request: Request, code: string) => {
    const reply: Reply = { id: request.id, result: fail(problem(code, '', '', '')) };
    port.onmessage?.({ data: reply } as MessageEvent<Reply>);
  };
  return { sent, port, answer };
}

const args = (name: string) => ({ project: { ...defaultProject(), name } });
const turn = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('connectEngine', () => {
  test('of plan requests made while one is running, only the newest is sent', async () => {
    const { sent, port, answer } = openPort();
    const client = connectEngine(port);
    const results = ['a', 'b', 'c', 'd'].map((name) => client.plan(args(name)));
    await turn();
    expect(sent.map((r) => (r.args as ReturnType<typeof args>).project.name)).toEqual(['a']);
    answer(sent[0]!, 'first');
    await turn();
    expect(sent.map((r) => (r.args as ReturnType<typeof args>).project.name)).toEqual(['a', 'd']);
    answer(sent[1]!, 'last');
    const settled = await Promise.all(results);
    expect(settled.map((r) => r?.problems[0]?.code ?? null)).toEqual(['first', null, null, 'last']);
  });

  test('answers find their own question, in whatever order they come', async () => {
    const { sent, port, answer } = openPort();
    const client = connectEngine(port);
    const one = client.ask('read', { text: '1', where: 'one' });
    const two = client.ask('read', { text: '2', where: 'two' });
    answer(sent[1]!, 'two');
    answer(sent[0]!, 'one');
    expect((await one).problems[0]?.code).toBe('one');
    expect((await two).problems[0]?.code).toBe('two');
  });

  test('steps are told while a plan is being made', async () => {
    const { sent, port, answer } = openPort();
    const steps: string[] = [];
    const client = connectEngine(port, (step) => steps.push(step));
    const plan = client.plan(args('a'));
    await turn();
    port.onmessage?.({ data: { id: sent[0]!.id, step: 'stakes' } } as never);
    answer(sent[0]!, 'done');
    await plan;
    expect(steps).toEqual(['stakes']);
  });
});

describe('what the worker carries', () => {
  test('every font of the catalogue has a file', () => {
    expect(FONT_CATALOGUE.filter((f) => wordFontUrl(f.file) === undefined)).toEqual([]);
  });

  test('a broken promise becomes a problem with its place and its cause', () => {
    const told = brokenProblem('plan', new Error('broken invariant: no ring'));
    expect(told.where).toBe('plan');
    expect(told.what).toContain('broken invariant: no ring');
    expect(told.severity).toBe('error');
  });
});
