import { explain, uncertainty } from '../calculation/index.js';
import { comparisonTable } from '../charge-path/scenario-text.js';
import { pointTable } from '../charge-path/point-text.js';
import { compareScenarios, type OperatingPoint } from '../charge-path/index.js';
import { decimals } from '../comparison/words.js';
import {
  pullInTimePlot,
  scenarioBars,
  stationPlot,
  type NamedPull,
  type PlotOptions,
  type PlotSpec,
} from '../plot/index.js';
import { CalculationError } from '../units/index.js';
import { CAUTIONS } from './cautions.js';
import { list, paragraph, type Block, type DataTable, type Document, type Section } from './document.js';
import { toHtml } from './html.js';
import { toMarkdown } from './markdown.js';
import { version } from './version.js';

/** A scenario as the page shows it. */
export interface ReportedScenario {
  readonly name: string;
  readonly point: OperatingPoint;
  /** What was assumed of it, in one line. */
  readonly assumed?: string;
}

/** What a page about scenarios is made of. */
export interface ScenarioReportContent {
  readonly heading: string;
  /** What it comes to, a sentence each. */
  readonly answers: readonly string[];
  /** The first is what the others are held against. */
  readonly scenarios: readonly ReportedScenario[];
  /** Names of those whose way from station to station is drawn; at most six read well. */
  readonly drawn: readonly string[];
  readonly pulls?: readonly NamedPull[];
  /** Further tables, such as costs. */
  readonly tables?: readonly DataTable[];
  /** Name of the scenario whose change is split, worked out and given its uncertainty. */
  readonly worked: string;
}

/** A page about scenarios. */
export interface ScenarioReport {
  readonly title: string;
  /** One page that needs nothing but itself. Needs vega and vega-lite for its pictures. */
  readonly html: Promise<string>;
  /** The same as Markdown, pictures as tables. */
  readonly markdown: string;
  /** As text. */
  toString(): string;
}

/**
 * A page about scenarios of one engine at one speed: what each changes, the way of the charge through them, pulls in time, what the
 * change is made of, and one change worked out step by step with its uncertainty.
 *
 * @param content - the solved scenarios and what is said of them; the first scenario is what the others count from.
 * @returns The page as HTML, made when it is asked for, and as Markdown.
 * @throws CalculationError if there is nothing to compare, or a name is none of the scenarios.
 * @example
 * const page = scenarioReport({
 *   heading: 'The same core on the bench and in the car',
 *   answers: ['In the car, behind a hot radiator, a third of the gain is left.'],
 *   scenarios: [{ name: 'bench', point: bench }, { name: 'car', point: car, assumed: 'behind a radiator of 90 °C' }],
 *   drawn: ['bench', 'car'],
 *   worked: 'car',
 * });
 * await writeFile('scenarios.html', await page.html);
 */
export function scenarioReport(content: ScenarioReportContent): ScenarioReport {
  const document = documentOf(content);
  const markdown = toMarkdown(document);
  let html: Promise<string> | undefined;
  return {
    title: document.title,
    get html() {
      return (html ??= toHtml(document));
    },
    markdown,
    toString: () => markdown,
  };
}

/** What a phone of 360 pixels leaves between the margins of the page. */
const NARROW = 320;

function documentOf(content: ScenarioReportContent): Document {
  const { heading, answers, scenarios, tables = [] } = content;
  const [base] = scenarios;
  if (base === undefined || scenarios.length < 2)
    throw missing('scenarios', 'at least two scenarios', `${scenarios.length}`);
  const assumed = scenarios.flatMap(({ name, assumed: text }) => (text === undefined ? [] : [`${name}: ${text}`]));
  const notes = notesOf(scenarios.map(({ point }) => point));
  return {
    title: heading,
    heading,
    footer: `${heading}, version ${version}`,
    sections: [
      section(
        'answer',
        'Answer',
        answers.map((text) => paragraph(text)),
        'answer',
      ),
      section('scenarios', 'Scenarios', [{ type: 'table', table: scenarioTable(scenarios) }]),
      section('pictures', 'Pictures', figures(content)),
      ...(tables.length === 0
        ? []
        : [
            section(
              'more',
              'Soak and cost',
              tables.map((table) => ({ type: 'table', table })),
            ),
          ]),
      section('split', 'What the change of power is made of', splits(scenarios)),
      section(
        'stations',
        'From station to station',
        scenarios.flatMap((scenario) => stationBlocks(scenario)),
      ),
      ...workedSections(content, base),
      section('assumed', 'What was assumed', list([...assumed, ...MODEL])),
      ...(notes.length === 0 ? [] : [section('notes', 'Notes on the scenarios', list(notes))]),
      section('cautions', 'Cautions', list(CAUTIONS)),
    ],
  };
}

/** What the numbers of every such page rest on. */
const MODEL: readonly string[] = [
  'Steady points: flow and pressure settle within a fraction of a second, the metal of a core within ten or twenty; pulls follow the metal.',
  'Air alone: spark timing and mixture are held. What a knock-limited engine may gain in timing is not in the power shown, and nothing here says how much timing it bears.',
  'Whiskers and uncertainties are those of the inputs that carry one, such as density exponent and capture efficiency; they are not the scatter of measured pulls.',
];

function section(id: string, title: string, blocks: readonly Block[], look: Section['look'] = 'plain'): Section {
  return { id, title, level: 2, look, blocks };
}

function scenarioTable(scenarios: readonly ReportedScenario[]): DataTable {
  const [base] = scenarios as readonly [ReportedScenario];
  const heads = [
    'cooling air kg/s',
    'face °C',
    'cooled %',
    'charge °C',
    'boost kPa',
    'air g/s',
    'power kW',
    'change kW',
  ];
  return {
    caption: `At ${decimals(base.point.engineSpeed.in('rpm'), 0)} rpm; changes count from ${base.name}`,
    columns: [{ head: 'scenario', align: 'left' }, ...heads.map((head) => ({ head, align: 'right' as const }))],
    rows: scenarios.map(({ name, point }) => [
      name,
      decimals(coolingAirOf(point), 2),
      decimals(point.core.coolingAirFace.in('°C'), 1),
      cooledShare(point),
      decimals(point.stations.manifold.temperature.in('°C'), 1),
      decimals(point.boostReading.in('kPa'), 1),
      decimals(point.airFlow.in('g/s'), 1),
      decimals(point.power.in('kW'), 1),
      signed(point.power.in('kW') - base.point.power.in('kW')),
    ]),
    look: 'wide',
  };
}

function coolingAirOf({ installation: { cooling } }: OperatingPoint): number {
  return (cooling.by === 'air' ? cooling : cooling.air).massFlow.in('kg/s');
}

/** How far the charge goes towards the air at the face, which is what people mean by how well a core works. */
function cooledShare({ core: { airSideEffectiveness: share } }: OperatingPoint): string {
  return share === undefined ? '' : decimals(share.in('%'), 1);
}

const signed = (value: number): string => (value > 0 ? `+${decimals(value, 1)}` : decimals(value, 1));

function figures({ scenarios, drawn, pulls = [] }: ScenarioReportContent): Block[] {
  const [base, ...others] = scenarios as readonly [ReportedScenario, ...ReportedScenario[]];
  const bars = others.map(({ name, point }) => {
    const { change } = compareScenarios(base.point, point);
    return { name, change };
  });
  const points = drawn.map((name) => named(scenarios, name));
  const plots: readonly [plot: (options: PlotOptions) => PlotSpec, caption: string][] = [
    [
      (options) => scenarioBars(bars, { what: 'change of power', against: base.name, ...options }),
      'What each scenario changes. Whiskers: twice the standard uncertainty that comes from the inputs.',
    ],
    [
      (options) => stationPlot(points, { property: 'temperature', ...options }),
      'Temperature of the charge from the weather to the manifold.',
    ],
    [
      (options) => stationPlot(points, { property: 'density', ...options }),
      'Density of the charge from the weather to the manifold, which is what fills the engine: cooling raises it, the loss of the core takes a little.',
    ],
    ...(pulls.length === 0
      ? []
      : ([
          [
            (options) => pullInTimePlot(pulls, options),
            'Charge temperature while the metal of the core soaks up heat.',
          ],
          [(options) => pullInTimePlot(pulls, { property: 'power', ...options }), 'Power in the same pulls.'],
        ] as [(options: PlotOptions) => PlotSpec, string][])),
  ];
  return plots.map(([plot, caption], i) => ({
    type: 'figure',
    figure: {
      number: i + 1,
      id: `picture-figure-${i + 1}`,
      caption,
      wide: plot({}),
      narrow: plot({ width: NARROW }),
      asText: 'The values stand in the tables.',
    },
  }));
}

function splits(scenarios: readonly ReportedScenario[]): Block[] {
  const [base, ...others] = scenarios as readonly [ReportedScenario, ...ReportedScenario[]];
  const compared = others.map(({ name, point }) => ({ name, ...{ comparison: compareScenarios(base.point, point) } }));
  const factors = [
    ...new Set(compared.flatMap(({ comparison }) => comparison.parts.map(({ factor }) => factor))),
  ].filter((factor) =>
    compared.some(
      ({ comparison }) => Math.abs(comparison.parts.find((part) => part.factor === factor)?.part.si ?? 0) > 5,
    ),
  );
  const table: DataTable = {
    caption: `Change of power against ${base.name}, kW: its parts, and the change they add up to`,
    columns: [
      { head: 'scenario', align: 'left' },
      ...[...factors, 'change', 'of it temperature and breathing'].map((head) => ({
        head,
        align: 'right' as const,
      })),
    ],
    rows: compared.map(({ name, comparison }) => [
      name,
      ...factors.map((factor) => inKilowatts(comparison.parts.find((part) => part.factor === factor)?.part.si ?? 0)),
      inKilowatts(comparison.change.si),
      inKilowatts(comparison.temperatureWithBreathing.si),
    ]),
    look: 'wide',
  };
  return [
    { type: 'table', table },
    paragraph(
      'Colder charge shows a lower volumetric efficiency: density gained, part of it lost in breathing. That is physics, and no fault.',
    ),
  ];
}

const inKilowatts = (watts: number): string => {
  const text = decimals(watts / 1000, 2);
  return watts > 0 && Number((watts / 1000).toFixed(2)) !== 0 ? `+${text}` : text;
};

function stationBlocks({ name, point }: ReportedScenario): Block[] {
  const { columns, rows, remarks } = pointTable(point);
  const said = new Set(notesOf([point]));
  return [
    { type: 'table', table: { caption: name, columns, rows } },
    ...list(
      remarks.filter((remark) => !said.has(remark)),
      'small',
    ),
  ];
}

/** What must be known of the points, each once. */
function notesOf(points: readonly OperatingPoint[]): readonly string[] {
  return [...new Set(points.flatMap(({ notes }) => notes.map(({ message }) => `Note: ${message}`)))];
}

function workedSections({ scenarios, worked }: ScenarioReportContent, base: ReportedScenario): Section[] {
  const { point } = named(scenarios, worked);
  const comparison = compareScenarios(base.point, point);
  const { caption, columns, rows, remarks } = comparisonTable(comparison);
  const budget = uncertainty(comparison.change);
  const steps = explain(comparison.change);
  return [
    section('worked-change', `From ${base.name} to ${worked}`, [
      { type: 'table', table: { caption, columns, rows } },
      ...list(
        remarks.filter((remark) => !notesOf([base.point, point]).includes(remark)),
        'small',
      ),
    ]),
    section('budget', 'Uncertainty of that change', [
      { type: 'made', html: budget.toHtml(), markdown: budget.toMarkdown() },
    ]),
    section('worked', 'That change worked out', [{ type: 'made', html: steps.toHtml(), markdown: steps.toMarkdown() }]),
  ];
}

function named(scenarios: readonly ReportedScenario[], name: string): ReportedScenario {
  const found = scenarios.find((scenario) => scenario.name === name);
  if (found) return found;
  throw missing('name', `one of ${scenarios.map((scenario) => `'${scenario.name}'`).join(', ')}`, `'${name}'`);
}

function missing(input: string, need: string, got: string): CalculationError {
  return new CalculationError('scenario report', [{ code: 'missing', input, need, got, mend: '' }]);
}
