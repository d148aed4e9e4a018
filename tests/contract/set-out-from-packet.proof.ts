/** Both demos in both papers, and six drawn words, from the text of packet.pdf alone. */
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
  for (const [text, font, width] of drawnWords()) {
    it(`meet the art: ${text} in ${font}`, () =>
      holdPacketAgainstArt(wordProject(text, font, width)));
  }
});
