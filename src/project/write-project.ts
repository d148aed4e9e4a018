/** From a project to the text of a saved file. */
import type { Project } from './model';

/** Keys in the order in which a person reads them; keys of lookups come by name, behind these. */
const ORDER = [
  ...['format', 'version', 'kind', 'id', 'name', 'club', 'date', 'units', 'paper', 'crewAddress'],
  ...['field', 'pattern', 'art', 'design', 'mowing', 'stakeout', 'labour', 'seats'],
  ...['book', 'baseSizeIn', 'bases', 'fence', 'fenceShape', 'trackWidthFt', 'skinArcFrom'],
  ...['skinRadiusFt', 'foulWidthFt', 'poles', 'left', 'right', 'controlSigmaIn', 'keepOuts'],
  ...['source', 'text', 'font', 'file', 'placement', 'x', 'y', 'at', 'eyeHeightFt', 'lookAt'],
  ...['bearingDeg', 'distanceFt', 'sigmaIn', 'passesPerBand', 'offsetFt', 'centre', 'radiusFt'],
  ...['widthFt', 'rotationDeg', 'ground', 'shape', 'marginFt', 'graphicLay', 'edgeLaps'],
  ...['wide', 'narrow', 'overrides', 'gate', 'toleranceIn', 'target95In', 'tape'],
  ...['secondTape', 'material', 'accuracyClass', 'readingSigmaIn', 'proportional', 'scaleSigma'],
  ...['limitFt', 'steel', 'temperatureF', 'pullLb', 'spanFt', 'standardF', 'standardPullLb'],
  ...['weightLbPerFt', 'sectionSqIn', 'crew', 'people', 'opens', 'closes', 'rates'],
  ...['low', 'likely', 'high', 'svg'],
];
const RANK = new Map(ORDER.map((key, i) => [key, i]));

/** The project as saved: JSON, two spaces, keys in a fixed order, a new line at the end. */
export function writeProject(project: Project): string {
  return `${JSON.stringify(project, sortKeys, 2)}\n`;
}

function sortKeys(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => compareKeys(a, b)));
}

function compareKeys(a: string, b: string): number {
  const byRank = (RANK.get(a) ?? ORDER.length) - (RANK.get(b) ?? ORDER.length);
  return byRank !== 0 ? byRank : a < b ? -1 : a > b ? 1 : 0;
}
