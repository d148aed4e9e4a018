/**
 * Both demos in both papers, the emblem in metres, and six drawn words, from the text of packet.pdf
 * alone; the word demo's stands in tests/proof/proof.test.ts as well.
 */
import { describe, it } from 'vitest';
import { holdPacketAgainstArt } from './hold-packet-against-art';
import { drawnWords, readDemo, wordProject } from './plan-of';

describe('jobs set out from the text of their packets alone', () => {
  for (const file of ['lanterns-word.json', 'lantern-emblem.json']) {
    for (const paper of ['letter', 'a4'] as const) {
      it(`meet the art: ${file}, ${paper}`, () =>
        holdPacketAgainstArt({ ...readDemo(file), paper }));
    }
  }
  it('meet the art: the emblem demo, A4 in metres', () =>
    holdPacketAgainstArt({ ...readDemo('lantern-emblem.json'), units: 'metric', paper: 'a4' }));
  for (const [text, font, width] of drawnWords()) {
    it(`meet the art: ${text} in ${font}`, () =>
      holdPacketAgainstArt(wordProject(text, font, width)));
  }
});
