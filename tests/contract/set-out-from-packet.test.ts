/**
 * From the text of packet.pdf alone; the word demo is set out by erring crews in tests/proof, and all
 * drawn words are in the proof beside this.
 */
import { describe, it } from 'vitest';
import { holdPacketAgainstArt } from './hold-packet-against-art';
import { readDemo } from './plan-of';

describe('a job set out from the text of its packet alone', () => {
  it('meets the art: the emblem demo, A4 in metres', () =>
    holdPacketAgainstArt({ ...readDemo('lantern-emblem.json'), units: 'metric', paper: 'a4' }));
});
