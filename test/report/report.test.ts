import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { describe, expect, it } from 'vitest';
import type { CompareOptions } from '../../src/comparison/index.js';
import { report } from '../../src/report/index.js';
import { torque } from '../../src/units/index.js';
import { compared, demoDay, demoLogs, everyOutcome, options } from '../plot/demo.js';
import { problemsOf } from './well-formed.js';

const day = demoDay();
const outcomes = everyOutcome();
const better = outcomes['better']!;
const one = report(better, { day, version: '9.8.7' });
const page = await one.html;
const several = report([better, outcomes['not resolved']!, outcomes['equivalent']!], { day });
const severalPage = await several.html;

const headingsOf = (html: string): string[] =>
  [...html.matchAll(/<h[1-6][^>]*>([^<]*)<\/h[1-6]>/g)].map((match) => match[1]!);
const textOf = (html: string): string => html.replace(/<style>.*?<\/style>/s, '').replaceAll(/<[^>]+>/g, ' ');

const SECTIONS = [
  'Answer',
  'What it rests on',
  'Why',
  'Pictures',
  'What must be equal',
  'What else was seen',
  'Pulls used and refused',
  'What to test next',
  'By engine speed',
  'Causes by engine speed',
  'Cores by engine speed',
  'Does torque follow the ripple of boost?',
  'Worked steps of the difference',
  'Uncertainty budget',
  'Files, options, version',
  'Sources',
  'Cautions',
];

describe('the page', () => {
  it('says everything in the order of the reader', () => {
    expect(headingsOf(page)).toEqual(['Tall core against stock core', ...SECTIONS]);
  });

  it('opens with the answer, the interval, the pulls used and the largest causes, before any picture', () => {
    const top = textOf(page.slice(0, page.indexOf('<figure')));
    expect(top).toContain('+3.8\u00a0kW at the hub (+2.8\u00a0%), between +2.7 and +4.9\u00a0kW');
    expect(top).toContain('5 pulls of stock core against 5 of tall core; refused: pull 4.csv of tall core.');
    expect(top).toContain('not corrected to a standard atmosphere');
    expect(top).toMatch(/charge temperature, 39 to 30 °C\s+\+3\.9 kW/);
    expect(top).toMatch(/everything else\s+\+0\.4 kW/);
  });

  it('is well formed, with unique ids and no reference into nothing', () => {
    expect(problemsOf(page)).toEqual([]);
    expect(problemsOf(severalPage)).toEqual([]);
  });

  it('needs nothing from anywhere and runs nothing', () => {
    const names = /http:\/\/www\.w3\.org\/(2000\/svg|1998\/Math\/MathML)/g;
    for (const html of [page, severalPage]) {
      expect(html.replaceAll(names, '')).not.toMatch(
        /https?:|\/\/[a-z]|@import|url\((?!#)|\ssrc=|<link|<script|<iframe|<img/,
      );
      expect(html).not.toMatch(/\son[a-z]+="|javascript:|<form|<details/);
      expect(html).toContain(`default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'`);
    }
  });

  it('can be read by a screen reader', () => {
    expect(page).toContain('<html lang="en">');
    expect(page).toContain('<a class="skip" href="#answer">');
    expect(page).toContain('<section id="answer"');
    const tables = page.match(/<table/g)!.length;
    expect(page.match(/<caption/g)!.length + page.match(/class="worked-steps"/g)!.length * 2).toBeGreaterThanOrEqual(
      tables,
    );
    for (const [cell] of page.matchAll(/<th(?=[\s>])[^>]*>/g)) expect(cell).toMatch(/scope="(col|row)"/);
    const pictures = page.match(/<svg/g)!.length;
    expect(page.match(/<svg[^>]*role="img" aria-labelledby="[^"]+" aria-describedby="[^"]+"/g)).toHaveLength(pictures);
    const levels = [...severalPage.matchAll(/<h([1-6])/g)].map((match) => Number(match[1]));
    levels.reduce((before, level) => {
      expect(level).toBeLessThanOrEqual(before + 1);
      return level;
    });
  });

  it('is made for paper: pages numbered and named, figures whole, worked steps open', () => {
    const style = /<style>(.*?)<\/style>/s.exec(page)![1]!;
    expect(style).toMatch(/@page\{.*counter\(page\) " of " counter\(pages\)/s);
    expect(style).toContain(`content:"tall core, stock core, input ${one.markdown.match(/input ([0-9a-f]{8})/)![1]!}"`);
    expect(style).toMatch(/@media print\{.*figure\{[^}]*break-inside:avoid/s);
    expect(style).toContain('attr(href)');
    expect(page).toContain('<math');
    expect(page).toContain('class="worked-steps"');
  });

  it('draws each picture for a page and for a phone', () => {
    expect(page.match(/<figure/g)).toHaveLength(5);
    expect(page.match(/<div class="wide"><svg/g)).toHaveLength(5);
    expect(page.match(/<div class="narrow"><svg[^>]* width="360"/g)).toHaveLength(5);
  });

  it('counts pulls in every caption and says how to read it', () => {
    const captions = [...page.matchAll(/<figcaption>(.*?)<\/figcaption>/gs)].map((match) => textOf(match[1]!));
    for (const caption of captions) expect(caption).toContain('5 pulls of tall core and 5 of stock core');
    expect(captions[0]).toContain('does not start at zero');
    expect(captions[0]).toContain('Do not judge by the gap between the shades; Figure 2 is the test.');
    expect(captions[1]).toContain('Dashed: ±2.0\u00a0kW, set beforehand.');
    expect(captions[1]).toContain('from 3900 to 6500\u00a0rpm (+4.1\u00a0kW)');
    expect(captions[2]).toContain('add up to it exactly');
    expect(captions[3]).toContain(
      'charge temperature raised it from 3500 to 6500\u00a0rpm (+4.1\u00a0kW on average there)',
    );
    expect(captions[3]).toContain('must not be added or read together');
    expect(captions[4]).toContain('in the order of the day');
  });

  it('names version, options and files, with a hash of the input that others can work out', () => {
    expect(page).toContain('coldside 9.8.7.');
    expect(textOf(page)).toContain('range of engine speed: 3500 to 6500\u00a0rpm');
    const hashes = demoLogs()
      .filter(({ setup }) => setup === 'stock core' || setup === 'tall core')
      .map(({ text }) => createHash('sha256').update(text).digest('hex'));
    for (const hash of hashes) expect(page).toContain(hash);
    expect(hashes).toHaveLength(11);
    const input = createHash('sha256')
      .update(`${hashes.sort().join('\n')}\n`)
      .digest('hex');
    expect(page).toContain(input);
  });

  it('cites what its numbers rest on, and gives the usual cautions', () => {
    const end = textOf(page.slice(page.indexOf('id="sources"')));
    expect(end).toMatch(/Heywood.*JCGM 100.*Worsley.*Lenzen/s);
    expect(end).toMatch(/Dynamometer.*monoxide.*Hot parts.*Pressure.*carbon dioxide.*Fuel.*Detonation.*Local codes/s);
    const answer = page.slice(page.indexOf('id="answer"'), page.indexOf('id="rests-on"'));
    expect(answer).toContain('Caution. A gain on the bench');
  });
});

describe('the title', () => {
  it.each([
    ['better', 'Pulls of tall core against stock core: +3.8 kW, between +2.7 and +4.9 kW'],
    ['worse', 'Pulls of stock core against tall core: −3.8 kW, between −4.9 and −2.7 kW'],
    ['better, within the margin', 'Pulls of tall core against stock core: +3.8 kW, between +2.7 and +4.9 kW'],
    ['equivalent', 'Pulls of short inlet hose against stock core: nothing worth having, less than 2.0 kW either way'],
    ['not resolved', 'Pulls of tall core + duct against tall core: not resolved'],
    ['cannot be compared', 'Pulls of tall core against stock core: cannot be compared'],
    ['unit suspected', 'Pulls of tall core against stock core: units or changes to be checked first'],
    ['too few pulls', 'Pulls of tall core against stock core: too few to tell'],
  ])('of "%s" states no more than was found', async (outcome, title) => {
    const made = report(outcomes[outcome]!);
    expect(made.title).toBe(title);
    expect(await made.html).toContain(`<title>${title}</title>`);
  });

  it('of several comparisons states no result at all', () => {
    expect(several.title).toBe('3 comparisons: tall core, stock core, tall core + duct, short inlet hose');
  });
});

describe('a page on what is no result', () => {
  it.each(['cannot be compared', 'unit suspected', 'too few pulls'])(
    'says so wherever a number could be taken for one: %s',
    async (outcome) => {
      const html = await report(outcomes[outcome]!).html;
      expect(problemsOf(html)).toEqual([]);
      expect(headingsOf(html)).toContain('What was seen, not a result');
      expect(html).not.toContain('class="interval"');
      expect(html).toContain('No cause is given');
      for (const [, caption] of html.matchAll(/<figcaption><b>[^<]*<\/b>(.*?)<\/figcaption>/gs))
        expect(caption).toMatch(/^ Not a result\. /);
      expect(textOf(html)).toContain('Not a result. Means');
      expect(html).not.toContain('Figure 2 is the test');
      expect(html).not.toContain('>verdict<');
    },
  );
});

describe('a page on several comparisons', () => {
  it('gives the answers in one table that leads to each', () => {
    const top = severalPage.slice(severalPage.indexOf('<table'), severalPage.indexOf('</table>'));
    expect(textOf(top).replaceAll(/\s+/g, ' ')).toContain(
      'tall core against stock core resolved, more +3.8 kW (+2.8 %) +2.7 and +4.9 kW 5 against 5 ' +
        'tall core + duct against tall core not resolved +1.1 kW (+0.8 %) −0.1 and +2.3 kW 3 against 5 ' +
        'short inlet hose against stock core nothing worth having (less than 2.0 kW) +0.6 kW (+0.4 %) −0.4 and +1.5 kW 6 against 5',
    );
    expect(top).toContain('href="#comparison-2"');
  });

  it('keeps the order within each and shares files, sources and cautions', () => {
    const each = SECTIONS.slice(0, 14);
    expect(headingsOf(severalPage).slice(1)).toEqual([
      'Answers',
      'Tall core against stock core',
      ...each,
      'Tall core + duct against tall core',
      ...each,
      'Short inlet hose against stock core',
      ...each,
      ...SECTIONS.slice(14),
    ]);
  });

  it('numbers its figures through', () => {
    const numbers = [...severalPage.matchAll(/<b>Figure (\d+)\.<\/b>/g)].map((match) => Number(match[1]));
    expect(numbers).toEqual(Array.from({ length: 16 }, (_, i) => i + 1));
    expect(textOf(severalPage)).toContain('Figure 8 is the test');
  });

  it('shows the differences side by side under the table of answers, before the first comparison', () => {
    const front = severalPage.slice(severalPage.indexOf('id="answers"'), severalPage.indexOf('id="comparison-1"'));
    expect(front.indexOf('<figure')).toBeGreaterThan(front.indexOf('</table>'));
    expect(front.match(/<figure/g)).toHaveLength(1);
    expect(front.match(/<div class="wide"><svg[^>]* width="720"/g)).toHaveLength(1);
    expect(front.match(/<div class="narrow"><svg[^>]* width="360"/g)).toHaveLength(1);
    const caption = textOf(/<figcaption>.*<\/figcaption>/s.exec(front)![0]);
    expect(caption).toContain('power at the hub, from 5 against 5, 3 against 5 and 6 against 5 pulls.');
    expect(caption).toContain('All panels have the same scales.');
    expect(caption).toContain('Dashed: ±2.0\u00a0kW, set beforehand.');
    expect(caption).toContain('Two candidates are told apart only by comparing them with each other');
    expect(page).not.toContain('side by side');
  });

  it('says in the caption where panels do not share their scales', () => {
    const captionOf = (second: CompareOptions): string =>
      /\*\*Figure 1\.\*\* (.*)/.exec(report([better, compared(day, 'stock core', 'tall core', second)]).markdown)![1]!;
    expect(captionOf({ engineSpeed: [4000, 5500] })).toContain('the ranges of engine speed differ');
    expect(captionOf({ compare: 'torque', worthwhile: torque(4, 'N·m') })).toContain(
      'power at the hub or torque at the hub, each from 5 against 5 pulls.',
    );
    expect(captionOf({ compare: 'torque', worthwhile: torque(4, 'N·m') })).toContain('have scales of their own');
    expect(captionOf({})).toContain('All panels have the same scales.');
  });

  it('gives the differences by engine speed as a table in Markdown', () => {
    const front = several.markdown.slice(0, several.markdown.indexOf('## Tall core against stock core'));
    expect(front).toContain('| tall core against stock core | from 3900 to 6500 rpm | better | \\+4.1 kW |');
    expect(front).toContain(
      '| tall core + duct against tall core | from 3500 to 6500 rpm | not resolved | \\+1.1 kW |',
    );
  });

  it('has no picture side by side where nothing is a result, and numbers its figures from 1 all the same', async () => {
    const html = await report([outcomes['unit suspected']!, outcomes['too few pulls']!]).html;
    const numbers = [...html.matchAll(/<b>Figure (\d+)\.<\/b>/g)].map((match) => Number(match[1]));
    expect(numbers).toEqual(numbers.map((_, i) => i + 1));
    expect(html).not.toContain('side by side');
  });

  it('gives no number for what is no result', async () => {
    const html = await report([outcomes['unit suspected']!, better]).html;
    const top = textOf(html.slice(html.indexOf('<table'), html.indexOf('</table>'))).replaceAll(/\s+/g, ' ');
    expect(top).toContain('tall core against stock core units or changes to be checked first not a result 5 against 5');
  });
});

describe('why, on the page', () => {
  const sectionOf = (html: string, id: string): string => {
    const from = html.indexOf(`id="${id}"`);
    return from < 0 ? '' : textOf(html.slice(from, html.indexOf('<section', from))).replaceAll(/\s+/g, ' ');
  };

  it('compares first what must be equal, and says what is not known', () => {
    const text = sectionOf(page, 'equal');
    expect(text).toMatch(/mixture equal lambda 0\.8\d\d lambda 0\.8\d\d 0\.03/);
    expect(text).toContain('spark not known');
    expect(text).toContain('spark advance was not logged in every pull');
  });

  it('gives each cause at each engine speed with its band', () => {
    const text = sectionOf(page, 'causes-by-speed');
    expect(text).toContain('each ± half of its own 95 % band for the whole curve at once');
    expect(text).toMatch(/5000 \+1\.0 ± 1\.0 \+4\.1 ± 0\.\d 0\.0 ± 0\.1 −1\.5 ± 0\.\d/);
    expect(text).toContain('from one score for each pull');
  });

  it('tells whether torque follows the ripple of boost, over all pulls, and what that cannot say', () => {
    const text = sectionOf(page, 'ripple');
    expect(text).toMatch(/In 10 pulls torque follows the ripple of boost: \d+ to \d+ % of the ripple/);
    expect(text).toContain('Going together is no cause');
    expect(text).toContain('only pulls that agree in size and phase are proof');
    expect(text).toContain('known only up to whole cycles');
  });

  it('gives the comparison at equal lambda a place of its own where the mixture differed, and never the title', async () => {
    const richer = report(outcomes['cannot be compared']!);
    const html = await richer.html;
    expect(headingsOf(html)).toContain('At equal lambda, not the headline');
    expect(sectionOf(html, 'equal-lambda')).toMatch(
      /0\.05\d richer\. Lambda differed by 0\.05\d .* cannot be told apart/,
    );
    expect(sectionOf(html, 'equal-lambda')).toContain('beside the answer and never in its place');
    expect(richer.title).not.toContain('lambda');
    expect(headingsOf(page)).not.toContain('At equal lambda, not the headline');
  });

  it('shows no cause by engine speed of what is no result', async () => {
    const html = await report(outcomes['unit suspected']!).html;
    expect(headingsOf(html)).not.toContain('Causes by engine speed');
    expect(headingsOf(html)).toContain('What must be equal');
  });
});

describe('the pulls on the page', () => {
  it('names each refusal with its reason, and what could not be read', async () => {
    const broken = demoDay(({ path, text }) => (path === 'stock core/pull 2.csv' ? { text: text.slice(0, 900) } : {}));
    const html = textOf(await report(compared(broken), { day: broken }).html);
    expect(html).toMatch(/tall core, pull 4\.csv: refused\. It ran lean/);
    expect(html).toMatch(/stock core, stock core\/pull 2\.csv: not read\. /);
  });

  it('prints the reasons for what was decided by hand', async () => {
    const byHand = {
      ...options,
      overrule: { 'tall core/pull 4.csv': 'probe was in the wrong bung' },
      leaveOut: { 'stock core/pull 3.csv': 'missed the gear' },
    };
    const html = textOf(await report(compared(day, 'stock core', 'tall core', byHand)).html);
    expect(html).toContain(
      'tall core, pull 4.csv: would have been refused, but was overruled (“probe was in the wrong bung”) and counts.',
    );
    expect(html).toContain('stock core, pull 3.csv: refused. Left out by hand: missed the gear');
  });

  it('shows the readings of both set-ups in one set of units', () => {
    const table = page.slice(page.indexOf('id="pulls"'), page.indexOf('id="next"'));
    expect(table).toContain('charge, °C');
    expect(table).toContain('boost, kPa');
    expect(table).not.toMatch(/°F|psi|inHg/);
  });
});

describe('hostile names', () => {
  const name = `<script>alert('x')</script> "quoted" ]]> & **bold** | [link](http://example.org) \\ </style>`;
  const hostile = demoDay(({ setup }) => (setup === 'tall core' ? { setup: name } : {}));
  const made = report(compared(hostile, 'stock core', name), { day: hostile, heading: name, version: '<b>1</b>' });

  it('stay text on the page', async () => {
    const html = await made.html;
    expect(problemsOf(html)).toEqual([]);
    expect(html).not.toMatch(/<script|<b>1|\shref="http/);
    expect(html.match(/<\/style>/g)).toHaveLength(1);
    expect(html).toContain('&lt;script&gt;');
  });

  it('stay text in Markdown', () => {
    expect(made.markdown).not.toMatch(/<script|<b>1/);
    expect(made.markdown).not.toMatch(/[^\\]\]\(http/);
    expect(made.markdown).not.toMatch(/[^\\]\*\*bold/);
    const tables = made.markdown.split('\n\n').map((block) => block.split('\n').filter((line) => line.startsWith('|')));
    for (const table of tables) {
      const widths = table.map((line) => line.replaceAll('\\\\', '').replaceAll('\\|', '').split('|').length);
      expect(new Set(widths).size).toBeLessThanOrEqual(1);
    }
  });
});

describe('the Markdown', () => {
  it('has the sections of the page in the same order', () => {
    const headings = [...one.markdown.matchAll(/^#+ (.*)$/gm)].map((match) => match[1]);
    expect(headings).toEqual(['Tall core against stock core', ...SECTIONS]);
  });

  it('gives the pictures as tables', () => {
    expect(one.markdown).toContain('| charge temperature | 39 to 30 °C | \\+3.9 kW | \\+2.9 % | \\+3.4 and +4.5 kW |');
    // Values at 31 speeds, and the causes of the difference and what the cores did at each of them.
    expect(one.markdown.match(/^\| \d{4} \|/gm)).toHaveLength(93);
    expect(one.markdown).not.toContain('<');
  });
});

describe('writing a report', () => {
  it('writes the page or the Markdown by the ending of the path, and makes the folders', async () => {
    const folder = mkdtempSync(`${tmpdir()}/coldside-`);
    try {
      await expect(one.write(`${folder}/a/b/day.html`)).resolves.toBe(`${folder}/a/b/day.html`);
      await one.write(`${folder}/day.md`);
      expect(readFileSync(`${folder}/a/b/day.html`, 'utf8')).toBe(page);
      expect(readFileSync(`${folder}/day.md`, 'utf8')).toBe(one.markdown);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('is the same twice', async () => {
    expect(await report(better, { day, version: '9.8.7' }).html).toBe(page);
  });
});

describe('a report refuses', () => {
  it('no comparison at all', () => {
    expect(() => report([])).toThrow(
      'report: comparisons must be at least one comparison, got none. Make one with compare(baseline, candidate).',
    );
  });

  it('files without a hash', () => {
    expect(() => report(better, { files: [{ file: 'a.csv', setup: 'a', rows: 1, hash: 'soon' }] })).toThrow(
      /files must be files with their SHA-256.*a\.csv with soon/,
    );
  });
});
