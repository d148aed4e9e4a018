/** The word demo in metres and six drawn words, from the stake files alone. */
import { holdFilesAgainstArt } from './hold-files-against-art';
import { drawnWords, readDemo, wordProject } from './plan-of';

holdFilesAgainstArt('the word demo in metres', () => ({
  ...readDemo('lanterns-word.json'),
  units: 'metric',
}));
for (const [text, font, width] of drawnWords()) {
  holdFilesAgainstArt(`${text} in ${font}, ${width} ft`, () => wordProject(text, font, width));
}
