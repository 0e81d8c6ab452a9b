import { CalculationError, type Problem } from '../../calculation/index.js';
import { describe, inputProblems, unknownNames } from '../../units/internal.js';
import type { OperationInput } from '../../units/origin.js';
import { CORRECTED_FLOW, REFERENCE_PRESSURE, REFERENCE_TEMPERATURE, WHEEL_SPEED } from '../bounds.js';
import type { CompressorMapData, CompressorMapPoint, CompressorSpeedLine, SurgePoint } from './data.js';
import { Surface, type SurfaceLine } from './surface.js';

const SPEED: OperationInput = {
  name: 'correctedSpeed',
  symbol: 'nc',
  kind: 'rotational speed',
  ...WHEEL_SPEED,
  min: 1,
};
const FLOW: OperationInput = { name: 'correctedFlow', symbol: 'mc', kind: 'mass flow', ...CORRECTED_FLOW, min: 1e-6 };
const RATIO: OperationInput = { name: 'pressureRatio', symbol: 'PR', kind: 'ratio', min: 1, max: 12 };
const EFFICIENCY: OperationInput = { name: 'isentropicEfficiency', symbol: 'eta', kind: 'ratio', min: 0.05, max: 1 };
const REFERENCE: readonly OperationInput[] = [
  { name: 'referenceTemperature', symbol: 'Tref', kind: 'temperature', ...REFERENCE_TEMPERATURE },
  { name: 'referencePressure', symbol: 'pref', kind: 'absolute pressure', ...REFERENCE_PRESSURE },
];

const MAP_NAMES = ['name', 'reference', 'speedLines', 'surgeLine'] as const satisfies (keyof CompressorMapData)[];

/** More than any map has; what comes from a file must not keep a page busy. */
const MOST_LINES = 100;
const MOST_POINTS = 500;
/** A list of a hundred mistakes helps nobody. */
const MOST_PROBLEMS = 8;
const GRID_ALONG = 48;
const GRID_SPEED = 6;

/** A map that can be read: lines from the lowest speed to the highest, points from surge to choke. */
export interface CheckedMap extends CompressorMapData {
  readonly name: string;
  readonly surface: Surface;
}

/**
 * Checks a map and puts it in order.
 *
 * @throws CalculationError naming every line and point that cannot be right, and how to mend it.
 */
export function checkedMap(data: CompressorMapData): CheckedMap {
  const given: Partial<CompressorMapData> = data ?? {};
  const name = typeof given.name === 'string' && given.name.trim() !== '' ? given.name : 'compressor map';
  const refuseIf = (problems: readonly Problem[]): void => {
    if (problems.length > 0) throw new CalculationError(name, problems.slice(0, MOST_PROBLEMS));
  };
  refuseIf([
    // A map taken over with changes brings its readings along.
    ...('isentropicEfficiency' in given ? [] : unknownNames(given, MAP_NAMES)),
    ...fields('reference', REFERENCE, given.reference),
    ...shapeProblems(given),
  ]);
  const { reference, speedLines, surgeLine } = data;
  const ordered = [...speedLines]
    .sort((a, b) => a.correctedSpeed.si - b.correctedSpeed.si)
    .map((line) => ({ ...line, points: byFlow(line.points) }));
  refuseIf([...ordered.flatMap(lineProblems), ...orderProblems(ordered)]);
  const surge = surgeLine && byFlow(surgeLine);
  if (surge) refuseIf(surgeProblems(surge));
  const surface = new Surface(ordered.map(inNumbers));
  refuseIf(crossingProblems(surface, ordered));
  return { name, reference, speedLines: ordered, surface, ...(surge ? { surgeLine: surge } : {}) };
}

const byFlow = <P extends SurgePoint>(points: readonly P[]): P[] =>
  [...points].sort((a, b) => a.correctedFlow.si - b.correctedFlow.si);

function inNumbers({ correctedSpeed, points }: CompressorSpeedLine): SurfaceLine {
  return {
    speed: correctedSpeed.si,
    flow: points.map(({ correctedFlow }) => correctedFlow.si),
    ratio: points.map(({ pressureRatio }) => pressureRatio.si),
    efficiency: points.map(({ isentropicEfficiency }) => isentropicEfficiency.si),
  };
}

function problem(code: Problem['code'], input: string, need: string, got: string, mend = ''): Problem {
  return { code, input, need, got, mend };
}

/** Whether the named fields of a record are quantities of the right kind and possible. */
function fields(path: string, inputs: readonly OperationInput[], record: unknown): readonly Problem[] {
  if (typeof record !== 'object' || record === null) {
    return [
      problem(
        record === undefined ? 'missing' : 'kind',
        path,
        `{ ${inputs.map(({ name }) => name).join(', ')} }`,
        describe(record),
      ),
    ];
  }
  const named = inputs.map((input) => ({ ...input, name: `${path}.${input.name}` }));
  const operation = {
    name: path,
    inputs: named,
    output: { symbol: 'y', kind: 'ratio', unit: '1' },
    formula: '',
    kernel: () => NaN,
    rules: [],
    sources: [],
  } as const;
  return inputProblems(
    operation,
    inputs.map(({ name }) => (record as Readonly<Record<string, unknown>>)[name]),
  );
}

/** Whether a list is one, of a length that can be used; then what is wrong with its entries. */
function list(
  path: string,
  value: unknown,
  least: number,
  most: number,
  each: (entry: unknown, path: string) => readonly Problem[],
): readonly Problem[] {
  if (!Array.isArray(value))
    return [problem(value === undefined ? 'missing' : 'kind', path, 'a list', describe(value))];
  if (value.length < least || value.length > most)
    return [problem('length', path, `a list of ${least} to ${most} entries`, `${value.length}`)];
  return value.flatMap((entry: unknown, i) => each(entry, `${path}[${i}]`));
}

function shapeProblems(given: Partial<CompressorMapData>): readonly Problem[] {
  const lines = list('speedLines', given.speedLines, 2, MOST_LINES, (line, path) => [
    ...fields(path, [SPEED], line),
    ...list(`${path}.points`, (line as Partial<CompressorSpeedLine> | null)?.points, 3, MOST_POINTS, (point, where) =>
      fields(where, [FLOW, RATIO, EFFICIENCY], point),
    ),
  ]);
  if (given.surgeLine === undefined) return lines;
  return [
    ...lines,
    ...list('surgeLine', given.surgeLine, 2, MOST_POINTS, (point, path) => fields(path, [FLOW, RATIO], point)),
  ];
}

const lineName = ({ correctedSpeed }: CompressorSpeedLine): string => `the speed line of ${String(correctedSpeed)}`;
const pointText = ({ correctedFlow, pressureRatio }: SurgePoint): string =>
  `${String(correctedFlow)} at ${String(pressureRatio)}`;

/** Flow rises from point to point; pressure may rise first, and does not once it has fallen. */
function lineProblems(line: CompressorSpeedLine): readonly Problem[] {
  const problems: Problem[] = [];
  let hasFallen = false;
  line.points.forEach((point, i) => {
    const before: CompressorMapPoint | undefined = line.points[i - 1];
    if (!before) return;
    const got = `${pointText(before)} and ${pointText(point)}`;
    if (point.correctedFlow.si <= before.correctedFlow.si) {
      const mend = 'Where a line stands upright at choke, set its points apart by the error of reading.';
      problems.push(problem('rule', lineName(line), 'points of different flow', got, mend));
    }
    const step = point.pressureRatio.si - before.pressureRatio.si;
    if (step > 0 && hasFallen) {
      const mend = 'Is a point of another line among them?';
      problems.push(problem('rule', lineName(line), 'falling in pressure ratio once it has fallen', got, mend));
    }
    hasFallen ||= step < 0;
  });
  if (!hasFallen)
    problems.push(
      problem(
        'rule',
        lineName(line),
        'falling in pressure ratio towards choke',
        pointText(line.points.at(-1)!),
        'Is the line complete?',
      ),
    );
  return problems;
}

/** Both ends of a line lie higher and further right than those of the line below it. */
function orderProblems(lines: readonly CompressorSpeedLine[]): readonly Problem[] {
  const problems: Problem[] = [];
  lines.forEach((line, i) => {
    const below = lines[i - 1];
    if (!below) return;
    if (line.correctedSpeed.si === below.correctedSpeed.si) {
      problems.push(problem('rule', lineName(line), 'given once', 'it twice', 'Put its points into one line.'));
      return;
    }
    for (const [end, at] of [
      ['surge', 0],
      ['choke', -1],
    ] as const) {
      const [here, there] = [line.points.at(at)!, below.points.at(at)!];
      if (here.correctedFlow.si > there.correctedFlow.si && here.pressureRatio.si > there.pressureRatio.si) continue;
      const need = `beyond ${lineName(below)} in flow and pressure ratio at its ${end} end`;
      const mend = 'End all lines alike, such as at one efficiency.';
      problems.push(problem('rule', lineName(line), need, `${pointText(here)} after ${pointText(there)}`, mend));
    }
  });
  return problems;
}

function surgeProblems(points: readonly SurgePoint[]): readonly Problem[] {
  return points.flatMap((point, i) => {
    const before = points[i - 1];
    if (!before) return [];
    if (point.correctedFlow.si > before.correctedFlow.si && point.pressureRatio.si > before.pressureRatio.si) return [];
    const got = `${pointText(before)} and ${pointText(point)}`;
    return [problem('rule', 'surgeLine', 'rising in flow and pressure ratio together', got)];
  });
}

/**
 * Where lines cross or fold over, a flow and a pressure ratio belong to two speeds. The surface turns over there, which the sign of its
 * Jacobian shows.
 */
function crossingProblems(surface: Surface, lines: readonly CompressorSpeedLine[]): readonly Problem[] {
  const small = 1e-6;
  for (let j = 0; j < lines.length - 1; j++) {
    const [low, high] = [surface.speeds[j]!, surface.speeds[j + 1]!];
    for (let i = 0; i < GRID_ALONG * GRID_SPEED; i++) {
      const along = ((i % GRID_ALONG) + 0.5) / GRID_ALONG;
      const speed = low + ((high - low) * (Math.floor(i / GRID_ALONG) + 0.5)) / GRID_SPEED;
      const slopes = (f: (b: number, n: number) => number): [number, number] => [
        (f(along + small, speed) - f(along - small, speed)) / (2 * small),
        (f(along, speed * (1 + small)) - f(along, speed * (1 - small))) / (2 * small * speed),
      ];
      const [flowAlong, flowSpeed] = slopes((b, n) => surface.flow(b, n));
      const [ratioAlong, ratioSpeed] = slopes((b, n) => surface.ratio(b, n));
      if (flowAlong * ratioSpeed - flowSpeed * ratioAlong > 0) continue;
      const where = `near ${surface.flow(along, speed).toPrecision(3)} kg/s at ${surface.ratio(along, speed).toPrecision(3)}`;
      const got = `${lineName(lines[j]!)} and ${lineName(lines[j + 1]!)} crossing or touching ${where}`;
      return [problem('rule', 'speedLines', 'lines that keep apart', got, 'Is a point on the wrong line?')];
    }
  }
  return [];
}
