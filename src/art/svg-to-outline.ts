/** An SVG drawing to clean outlines. Nothing in it is fetched and nothing is run. */
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import type { Artwork } from './model';
import { composePaint, type Composed } from './svg/compose-paint';
import { indexRules, parseStyleSheets, type Rule } from './svg/css';
import { allElements, attribute, type SvgElement } from './svg/element';
import { checkCrossings } from './svg/crossings';
import { parseSvg, type ParsedSvg } from './svg/parse-svg';
import { MAX_MATCHES } from './svg/limits';
import { readLength } from './svg/numbers';
import { reportLinks, reportScripts, reportSheets } from './svg/remarks';
import { createReport, place, type Report } from './svg/report';
import { INITIAL_STYLE } from './svg/style';
import { readViewBox } from './svg/viewport';
import { walkDrawing, type Walk } from './svg/walk';

/**
 * All painted shapes of the drawing as one region in the art frame, y up: dark paint is added and
 * white paint cuts, in paint order. What is not honoured comes back as warnings and notes.
 * Problems: those of `parseSvg`; `svg-viewbox` (a page without size), `svg-too-complex`,
 * `svg-empty` (nothing is painted, or white covers all).
 */
export function svgToOutline(text: string, file: string): Result<Artwork> {
  const drawn = readSvg(text, file);
  return drawn.ok ? succeed({ region: drawn.value.region }, drawn.problems) : drawn;
}

/** As `svgToOutline`, with the map from the drawing's root units (y down) to the art frame. */
export function readSvg(text: string, file: string): Result<Composed> {
  const parsed = parseSvg(text, file);
  if (!parsed.ok) return parsed;
  const { root } = parsed.value;
  const flat = checkPage(root, file);
  if (flat) return fail(...parsed.problems, flat);
  const report = createReport(file);
  const walk = readDrawing(parsed.value, report);
  const told = (): Problem[] => [...parsed.problems, ...report.problems()];
  walk.exceeded ??= checkCrossings(walk.items);
  if (walk.exceeded !== null) return fail(...told(), tooComplex(file, walk.exceeded));
  const composed = composePaint(walk.items, report);
  return composed ? succeed(composed, told()) : fail(...told(), nothingDrawn(file, walk));
}

function readDrawing(parsed: ParsedSvg, report: Report): Walk {
  const elements = allElements(parsed.root);
  const sheets = elements.filter((e) => e.tag === 'style');
  const sheet = parseStyleSheets(sheets.map((e) => e.text));
  reportSheets(sheet, sheets[0]?.line ?? 0, report);
  reportLinks(elements, parsed.outsideStyles, report);
  reportScripts(elements, report);
  const walk: Walk = {
    rules: indexRules(sheet.rules),
    byId: indexById(elements),
    report,
    items: [],
    segments: 0,
    entered: 0,
    characters: 0,
    dashed: 0,
    exceeded: checkRules(sheet.rules, elements.length),
  };
  walkDrawing(walk, parsed.root, INITIAL_STYLE);
  return walk;
}

/** Every rule may have to be tried on every element, and a joined one on all that it stands in. */
function checkRules(rules: readonly Rule[], elements: number): string | null {
  const effort = rules.reduce(
    (n, { selector: { length } }) => n + (length > 1 ? 20 * length : 1),
    0,
  );
  return effort * elements > MAX_MATCHES
    ? `its ${rules.length} style rules for ${elements} elements are too many to follow`
    : null;
}

/** The first element of a name keeps it. */
function indexById(elements: readonly SvgElement[]): Map<string, SvgElement> {
  const out = new Map<string, SvgElement>();
  for (const element of elements) {
    const id = attribute(element, 'id');
    if (id !== undefined && !out.has(id)) out.set(id, element);
  }
  return out;
}

/** A page without size shows nothing (SVG 1.1, 7.7): better said than guessed. */
function checkPage(root: SvgElement, file: string): Problem | null {
  const flat = (['width', 'height'] as const).some((name) => {
    const side = readLength(attribute(root, name) ?? '', 100);
    return side !== null && side <= 0;
  });
  if (readViewBox(attribute(root, 'viewBox')) !== 'bad' && !flat) return null;
  return problem(
    'svg-viewbox',
    place(file, root.line),
    'the page of the drawing has no size, or a size that cannot be read',
    'give the svg element a viewBox of four numbers, its width and height above zero',
  );
}

const tooComplex = (file: string, what: string): Problem =>
  problem('svg-too-complex', file, what, 'simplify the drawing: keep only what is to be mown');

function nothingDrawn(file: string, walk: Walk): Problem {
  const what =
    walk.items.length === 0
      ? 'the drawing has no shape that is painted'
      : 'nothing of the drawing is left to mow: its shapes have no area, lie outside the page, or are covered in white';
  return problem(
    'svg-empty',
    file,
    what,
    'give at least one shape inside the page a dark fill or line',
  );
}
