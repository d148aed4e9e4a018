/** Both demos and a drawn word from the stake files alone; all drawn words are in the proof beside this. */
import { holdFilesAgainstArt } from './hold-files-against-art';
import { drawnWords, readDemo, wordProject } from './plan-of';

holdFilesAgainstArt('the word demo', () => readDemo('lanterns-word.json'));
holdFilesAgainstArt('the emblem demo', () => readDemo('lantern-emblem.json'));
for (const [text, font, width] of drawnWords().slice(0, 1)) {
  holdFilesAgainstArt(`${text} in ${font}, ${width} ft`, () => wordProject(text, font, width));
}
