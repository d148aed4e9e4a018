/** Drawings that are broken, hostile or ask for what is not honoured: data, never an exception. */
import fc from 'fast-check';
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadArtwork } from '../../src/art/load-artwork';
import { svgToOutline } from '../../src/art/svg-to-outline';
import { regionArea, regionBox } from '../../src/geometry/region';
import { svgFixture } from './support/assets';

const NS = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"';
const page = (inside: string): string => `<svg ${NS} viewBox="0 0 100 100">\n${inside}\n</svg>`;
const RECT = '<rect x="10" y="10" width="40" height="20"/>';
const codes = (svg: string): string[] => svgToOutline(svg, 'a.svg').problems.map((p) => p.code);

/** Area over the area of its box: 1 for a lone upright rectangle. */
function fullness(svg: string): number {
  const result = svgToOutline(svg, 'a.svg');
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const box = regionBox(result.value.region)!;
  return regionArea(result.value.region) / ((box.maxX - box.minX) * (box.maxY - box.minY));
}

describe('refused, with the reason', () => {
  const bomb = `<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;">]>${page('<text>&b;</text>')}`;
  const copies = 'abcdefgh'
    .split('')
    .map((id, i, all) =>
      all[i + 1] ? `<g id="${all[i + 1]}">${`<use href="#${id}"/>`.repeat(9)}</g>` : '',
    )
    .join('');
  const points = Array.from({ length: 900 }, (_, i) => `${(i * 37) % 101} ${(i * 61) % 97}`);
  it.each<readonly [string, string, string]>([
    ['nothing at all', '', 'svg-xml'],
    ['not XML', 'lanterns', 'svg-xml'],
    ['an unclosed element', '<svg><g></svg>', 'svg-xml'],
    ['another kind of file', '<html><body/></html>', 'svg-not-svg'],
    ['an entity bomb', bomb, 'svg-entity'],
    ['too many elements', page('<g/>'.repeat(40_000)), 'svg-too-complex'],
    ['deep nesting', page('<g>'.repeat(400) + '</g>'.repeat(400)), 'svg-too-complex'],
    ['copies of copies', page(`<g id="a">${RECT}</g>${copies}`), 'svg-too-complex'],
    ['a scribble', page(`<path d="M${points.join('L')}"/>`), 'svg-too-complex'],
    [
      'styles without end',
      page(`<style>${'g g g rect{fill:red}'.repeat(99)}</style>${RECT.repeat(5000)}`),
      'svg-too-complex',
    ],
    ['a page without size', `<svg ${NS} viewBox="0 0 0 100">${RECT}</svg>`, 'svg-viewbox'],
    ['an unreadable page', `<svg ${NS} viewBox="a b c d">${RECT}</svg>`, 'svg-viewbox'],
    ['a page of width 0', `<svg ${NS} width="0" height="9">${RECT}</svg>`, 'svg-viewbox'],
    ['no shapes', page(''), 'svg-empty'],
    ['only definitions', page(`<defs>${RECT}</defs>`), 'svg-empty'],
    ['nothing painted', page('<rect width="9" height="9" fill="none"/>'), 'svg-empty'],
    ['a line without area', page('<path d="M0 0H50"/>'), 'svg-empty'],
    [
      'all covered in white',
      page(`${RECT}<rect width="99" height="99" fill="#fff"/>`),
      'svg-empty',
    ],
  ])('%s', (_, svg, code) => {
    const result = svgToOutline(svg, 'a.svg');
    expect(result.ok).toBe(false);
    expect(result.problems.map((p) => p.code)).toContain(code);
    for (const p of result.problems) expect(p.where).toContain('a.svg');
  });

  it('a file over 20 MB', () => {
    const result = svgToOutline(page(`<!--${'x'.repeat(20_500_000)}-->${RECT}`), 'big.svg');
    expect(result.problems[0]).toMatchObject({ code: 'svg-too-large', where: 'big.svg' });
  });

  it('names the line of a mistake', () => {
    const result = svgToOutline('<svg>\n<g>\n</svg>', 'a.svg');
    expect(result.problems[0]!.where).toMatch(/^a\.svg line \d+$/);
  });

  it('a file that is not there', () => {
    const result = loadArtwork(
      { kind: 'svg', file: 'no.svg' },
      { fonts: {}, files: { 'b.svg': '' } },
    );
    expect(result.problems[0]).toMatchObject({ code: 'art-file-missing', where: 'no.svg' });
  });
});

describe('read, with what was done', () => {
  it.each<readonly [string, string, string]>([
    ['text', '<text>Hi</text>', 'svg-text'],
    [
      'a picture',
      '<image href="https://example.invalid/a.png" width="9" height="9"/>',
      'svg-image',
    ],
    ['an outside copy', '<use href="https://example.invalid/a.svg#x"/>', 'svg-external'],
    [
      'an outside style',
      '<style>@import url("https://example.invalid/a.css");</style>',
      'svg-external',
    ],
    ['a script', '<script>throw new Error("run")</script>', 'svg-script'],
    ['a script in definitions', '<defs><script>1</script></defs>', 'svg-script'],
    ['an event handler', '<g onclick="alert(1)"/>', 'svg-script'],
    ['a foreign object', '<foreignObject><p/></foreignObject>', 'svg-foreign'],
    ['animation', '<rect><animate attributeName="x"/></rect>', 'svg-animation'],
    ['a clip', '<g clip-path="url(#c)"/>', 'svg-clip'],
    ['a mask', '<g mask="url(#c)"/>', 'svg-mask'],
    ['a filter', '<g style="filter:url(#c)"/>', 'svg-filter'],
    ['a copy of itself', '<g id="loop"><use href="#loop"/></g>', 'svg-use-loop'],
    [
      'two copies of each other',
      '<g id="p"><use xlink:href="#q"/></g><g id="q"><use href="#p"/></g>',
      'svg-use-loop',
    ],
    ['a copy of nothing', '<use href="#gone"/>', 'svg-use-missing'],
    ['no number', '<circle r="NaN"/>', 'svg-number'],
    ['a number past all bounds', '<circle cx="1e300" r="1"/>', 'svg-number'],
    [
      'an unreadable transform',
      '<rect width="9" height="9" transform="spin(9)"/>',
      'svg-transform',
    ],
    ['no colour', '<g fill="grassy"/>', 'svg-colour'],
    ['a selector not understood', '<style>rect:hover { fill: none }</style>', 'svg-style'],
    ['a broken path', '<path d="M60 60h9v9zL5 q"/>', 'svg-path'],
  ])('%s', (_, inside, code) => {
    const result = svgToOutline(page(RECT + inside), 'a.svg');
    expect(result.ok).toBe(true);
    expect(result.problems.map((p) => p.code)).toContain(code);
    for (const p of result.problems) expect(p.severity).not.toBe('error');
  });

  it('a gradient as solid, an outside one too but reported as not fetched', () => {
    const inside = page('<rect width="9" height="9" fill="url(#sky)"/>');
    expect(codes(inside)).toEqual(['svg-gradient']);
    expect(codes(inside.replace('#sky', 'a.svg#sky'))).toEqual(['svg-external']);
    expect(fullness(inside)).toBeCloseTo(1, 6);
  });

  it('only white shapes as the graphic', () => {
    const white = page('<rect width="9" height="9" fill="white"/>');
    expect(codes(white)).toEqual(['svg-all-white']);
    expect(fullness(white)).toBeCloseTo(1, 6);
  });

  it('!important over the style attribute (CSS 2.1, 6.4.2)', () => {
    const style = '<style>.cold { fill: none !important }</style>';
    const cold = '<circle class="cold" style="fill:#000" cx="30" cy="20" r="30"/>';
    expect(fullness(page(style + cold + RECT))).toBeCloseTo(1, 6);
  });
});

describe('whatever it is given', () => {
  const SEED = 20;
  const names = readdirSync('tests/fixtures/svg').map((f) => f.replace('.svg', ''));

  it('returns a result for fixtures cut short or scrambled', () => {
    const mangled = fc
      .record({
        name: fc.constantFrom(...names),
        cut: fc.double({ min: 0, max: 1, noNaN: true }),
        put: fc.constantFrom('', '<', '"', '-', '9e9', 'NaN', '</g>', '#', '\0', 'z', ' '),
        keep: fc.boolean(),
      })
      .map(({ name, cut, put, keep }) => {
        const whole = svgFixture(name);
        const at = Math.floor(cut * whole.length);
        return whole.slice(0, at) + put + (keep ? whole.slice(at + 1) : '');
      });
    fc.assert(fc.property(mangled, isSound), { seed: SEED, numRuns: 120 });
  });

  it('returns a result for garbage', () => {
    const garbage = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 200 }),
      fc.string({ maxLength: 60 }).map((d) => page(`<path d="M1 1${d.replace(/[<&"]/g, '')}"/>`)),
      fc
        .string({ maxLength: 60 })
        .map((t) => page(`<g transform="${t.replace(/[<&"]/g, '')}">${RECT}</g>`)),
      fc
        .string({ maxLength: 80 })
        .map((c) => page(`<style>${c.replace(/[<&]/g, '')}</style>${RECT}`)),
    );
    fc.assert(fc.property(garbage, isSound), { seed: SEED, numRuns: 200 });
  });

  function isSound(svg: string): boolean {
    const result = svgToOutline(svg, 'a.svg');
    if (!result.ok) return result.problems.some((p) => p.severity === 'error');
    const points = result.value.region.flat();
    return points.length > 0 && points.every((p) => Number.isFinite(p.x) && Number.isFinite(p.y));
  }
});
