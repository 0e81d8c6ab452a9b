import {
  calculation,
  derived,
  input,
  output,
  source,
  type Calculation,
  type RequiredInput,
} from '../../calculation/index.js';
import type { Rule } from '../../units/origin.js';
import { CORRECTED_FLOW, WHEEL_SPEED } from '../bounds.js';
import type { CheckedMap } from './check.js';
import { REACH_ALONG, REACH_SPEED, type Place, type Side } from './surface.js';
import { surgeLineOf } from './surge-line.js';

type Flow = RequiredInput<'mass flow'>;
type Ratio = RequiredInput<'ratio'>;
type Speed = RequiredInput<'rotational speed'>;

/** What can be read on a map; each is a calculation of that map, with its own name, checks and history. */
export interface CompressorMapReadings {
  /** Isentropic efficiency at a corrected flow and a pressure ratio. */
  readonly isentropicEfficiency: Calculation<{ correctedFlow: Flow; pressureRatio: Ratio }, 'ratio'>;
  /** Corrected speed at a corrected flow and a pressure ratio. */
  readonly correctedSpeed: Calculation<{ correctedFlow: Flow; pressureRatio: Ratio }, 'rotational speed'>;
  /** Pressure ratio at a corrected flow and a corrected speed. */
  readonly pressureRatio: Calculation<{ correctedFlow: Flow; correctedSpeed: Speed }, 'ratio'>;
  /** Corrected flow at a corrected speed and a pressure ratio, where the line falls towards choke. */
  readonly correctedFlow: Calculation<{ correctedSpeed: Speed; pressureRatio: Ratio }, 'mass flow'>;
  /** Corrected flow of the surge line at a pressure ratio. */
  readonly surgeFlow: Calculation<{ pressureRatio: Ratio }, 'mass flow'>;
  /** Corrected flow at surge on a speed line. */
  readonly surgeFlowAtSpeed: Calculation<{ correctedSpeed: Speed }, 'mass flow'>;
  /** Pressure ratio at surge on a speed line. */
  readonly surgePressureRatio: Calculation<{ correctedSpeed: Speed }, 'ratio'>;
  /** Corrected flow at the choke end of a speed line. */
  readonly chokeFlow: Calculation<{ correctedSpeed: Speed }, 'mass flow'>;
  /** Lowest corrected flow that the map holds at a pressure ratio. */
  readonly lowestFlow: Calculation<{ pressureRatio: Ratio }, 'mass flow'>;
  /** Highest corrected flow that the map holds at a pressure ratio. */
  readonly highestFlow: Calculation<{ pressureRatio: Ratio }, 'mass flow'>;
}

const SOURCES = [
  source('fritschCarlson1980', 'monotone piecewise cubic interpolation', 'memory'),
  source('fritschButland1984', 'slopes from neighbouring chords', 'memory'),
  derived('points of equal distance along the speed lines are joined over speed'),
];
const FAN_LAWS = source('dixonHall', 'dimensional analysis: flow with speed, work with its square', 'memory');

/** Where something is found on a map: on it, or beyond it with the side. */
interface Found {
  readonly side: Side | undefined;
  readonly place: Place | undefined;
}

/** The readings of a map. */
export function readingsOf(map: CheckedMap, extrapolation: 'refuse' | 'note'): CompressorMapReadings {
  const { name, surface, speedLines } = map;
  const middle = speedLines[Math.floor(speedLines.length / 2)]!;
  const point = middle.points[Math.floor(middle.points.length / 2)]!;
  const flow = (): Flow => input('mc', 'mass flow', { ...CORRECTED_FLOW, min: 1e-6, typical: point.correctedFlow.si });
  const ratio = (): Ratio => input('PR', 'ratio', { min: 1, max: 12, typical: point.pressureRatio.si });
  const speed = (): Speed =>
    input('nc', 'rotational speed', { ...WHEEL_SPEED, min: 1, typical: middle.correctedSpeed.si });
  const flowUnit = point.correctedFlow.unit as 'kg/s';
  const speedUnit = middle.correctedSpeed.unit as 'rpm';
  const rulesFor = (found: (...si: number[]) => Found): Rule[] => sideRules(map, extrapolation, found);
  const task = 'compress the charge';
  const sources = extrapolation === 'note' ? [...SOURCES, FAN_LAWS] : SOURCES;

  const atFlowAndRatio = remembered((m, PR) => found(surface.locate(m, PR), () => surface.locateAround(m, PR)));
  const atFlowAndSpeed = remembered((m, n) =>
    onLine(n, surface.alongAtFlow(m, n), () => surface.alongAtFlow(m, n, true)),
  );
  const atSpeedAndRatio = remembered((n, PR) =>
    onLine(n, surface.alongAtRatio(PR, n), () => surface.alongAtRatio(PR, n, true)),
  );
  const surge = surgeLineOf(map);
  const atSurge = remembered((n) =>
    onLine(n, surface.sideOfSpeed(n) ?? surge.along(n), () => surface.sideOfSpeed(n, true) ?? surge.along(n)),
  );
  const atChoke = remembered((n) => onLine(n, surface.sideOfSpeed(n) ?? 1, () => surface.sideOfSpeed(n, true) ?? 1));
  const value = (place: Place | undefined, read: (place: Place) => number): number => (place ? read(place) : NaN);
  const flowAt = ({ along, speed: n }: Place): number => surface.flow(along, n);
  const ratioAt = ({ along, speed: n }: Place): number => surface.ratio(along, n);
  const efficiencyAt = ({ along, speed: n }: Place): number => {
    const eta = surface.efficiency(along, n);
    return eta > 0 && eta <= 1 ? eta : NaN;
  };
  const rightOfSurge: Rule[] = map.surgeLine
    ? [
        {
          need: `a flow right of the surge line of ${name}`,
          holds: (m, PR) => !(m < surge.flow(PR)),
          otherwise: 'note',
        },
      ]
    : [];
  const onMap = (range: (PR: number) => number): Rule => ({
    need: `a pressure ratio that ${name} holds`,
    holds: (PR) => !Number.isNaN(range(PR)),
  });

  return {
    isentropicEfficiency: calculation({
      name: `isentropic efficiency on ${name}`,
      task,
      inputs: { correctedFlow: flow(), pressureRatio: ratio() },
      output: output('eta', 'ratio', '%'),
      formula: 'mapEfficiency(mc, PR)',
      si: (m, PR) => value(atFlowAndRatio(m, PR).place, efficiencyAt),
      rules: [...rulesFor(atFlowAndRatio), ...rightOfSurge],
      sources,
    }),
    correctedSpeed: calculation({
      name: `corrected speed on ${name}`,
      task,
      inputs: { correctedFlow: flow(), pressureRatio: ratio() },
      output: output('nc', 'rotational speed', speedUnit),
      formula: 'mapSpeed(mc, PR)',
      si: (m, PR) => value(atFlowAndRatio(m, PR).place, (place) => place.speed),
      rules: [...rulesFor(atFlowAndRatio), ...rightOfSurge],
      sources,
    }),
    pressureRatio: calculation({
      name: `pressure ratio on ${name}`,
      task,
      inputs: { correctedFlow: flow(), correctedSpeed: speed() },
      output: output('PR', 'ratio', '1'),
      formula: 'mapPressureRatio(mc, nc)',
      si: (m, n) => value(atFlowAndSpeed(m, n).place, ratioAt),
      rules: rulesFor(atFlowAndSpeed),
      sources,
    }),
    correctedFlow: calculation({
      name: `corrected flow on ${name}`,
      task,
      inputs: { correctedSpeed: speed(), pressureRatio: ratio() },
      output: output('mc', 'mass flow', flowUnit),
      formula: 'mapFlow(nc, PR)',
      si: (n, PR) => value(atSpeedAndRatio(n, PR).place, flowAt),
      rules: rulesFor(atSpeedAndRatio),
      sources,
    }),
    surgeFlow: calculation({
      name: `surge flow on ${name}`,
      task,
      inputs: { pressureRatio: ratio() },
      output: output('ms', 'mass flow', flowUnit),
      formula: 'mapSurgeFlow(PR)',
      si: surge.flow,
      rules: [
        {
          need: `a pressure ratio that the surge line of ${name} reaches`,
          holds: (PR) => !Number.isNaN(extrapolation === 'note' ? surge.flow(PR) : surge.known(PR)),
        },
        {
          need: `a pressure ratio on the surge line of ${name}; beyond, it is continued`,
          holds: (PR) => !Number.isNaN(surge.known(PR)),
          otherwise: 'note',
        },
      ],
      sources,
    }),
    surgeFlowAtSpeed: calculation({
      name: `surge flow of a speed line on ${name}`,
      task,
      inputs: { correctedSpeed: speed() },
      output: output('ms', 'mass flow', flowUnit),
      formula: 'mapSurgeFlowAtSpeed(nc)',
      si: (n) => value(atSurge(n).place, flowAt),
      rules: rulesFor(atSurge),
      sources,
    }),
    surgePressureRatio: calculation({
      name: `pressure ratio at surge on ${name}`,
      task,
      inputs: { correctedSpeed: speed() },
      output: output('PRs', 'ratio', '1'),
      formula: 'mapSurgePressureRatio(nc)',
      si: (n) => value(atSurge(n).place, ratioAt),
      rules: rulesFor(atSurge),
      sources,
    }),
    chokeFlow: calculation({
      name: `choke flow on ${name}`,
      task,
      inputs: { correctedSpeed: speed() },
      output: output('mch', 'mass flow', flowUnit),
      formula: 'mapChokeFlow(nc)',
      si: (n) => value(atChoke(n).place, flowAt),
      rules: rulesFor(atChoke),
      sources,
    }),
    lowestFlow: calculation({
      name: `lowest flow on ${name}`,
      task,
      inputs: { pressureRatio: ratio() },
      output: output('mmin', 'mass flow', flowUnit),
      formula: 'mapLowestFlow(PR)',
      si: (PR) => surface.lowestFlow(PR),
      rules: [onMap((PR) => surface.lowestFlow(PR))],
      sources,
    }),
    highestFlow: calculation({
      name: `highest flow on ${name}`,
      task,
      inputs: { pressureRatio: ratio() },
      output: output('mmax', 'mass flow', flowUnit),
      formula: 'mapHighestFlow(PR)',
      si: (PR) => surface.highestFlow(PR),
      rules: [onMap((PR) => surface.highestFlow(PR))],
      sources,
    }),
  };
}

/** Rules and kernel of one call ask for the same place, so the last answer is kept. */
function remembered(find: (...si: number[]) => Found): (...si: number[]) => Found {
  let asked: readonly number[] = [];
  let answer: Found;
  return (...si) => {
    if (asked.length !== si.length || si.some((value, i) => value !== asked[i])) [asked, answer] = [si, find(...si)];
    return answer;
  };
}

function found(inside: Place | Side, around: () => Place | Side): Found {
  if (typeof inside !== 'string') return { side: undefined, place: inside };
  const beyond = around();
  return { side: inside, place: typeof beyond === 'string' ? undefined : beyond };
}

function onLine(speed: number, inside: number | Side, around: () => number | Side): Found {
  const placed = (along: number | Side): Place | Side => (typeof along === 'number' ? { along, speed } : along);
  return found(placed(inside), () => placed(around()));
}

/** One rule for each side of the map, and one for how far it may be continued. */
function sideRules(
  { name, surface, speedLines }: CheckedMap,
  extrapolation: 'refuse' | 'note',
  find: (...si: number[]) => Found,
): Rule[] {
  const lines = [speedLines[0]!, speedLines.at(-1)!].map(({ correctedSpeed }) => String(correctedSpeed));
  const needs: Readonly<Record<Side, string>> = {
    left: `a point right of where the speed lines of ${name} begin (surge)`,
    right: `a point left of where the speed lines of ${name} end (choke)`,
    below: `a point not below the lowest speed line of ${name}, ${lines[0]!}`,
    above: `a point not above the highest speed line of ${name}, ${lines[1]!}`,
  };
  const how =
    extrapolation === 'refuse' ? ", or a map made with { extrapolation: 'note' }" : '; beyond, it is continued';
  const sides = (Object.keys(needs) as Side[]).map((side): Rule => ({
    need: `${needs[side]}${how}`,
    holds: (...si) => find(...si).side !== side,
    otherwise: extrapolation,
  }));
  if (extrapolation === 'refuse') return sides;
  const [slowest, fastest] = REACH_SPEED.map((share, i) => Math.round(surface.speedRange[i]! * share * 60));
  const reach: Rule = {
    need: `a point that the map can be continued to: ${slowest} to ${fastest} rpm, ${REACH_ALONG * 100} % of a line's length beyond its ends`,
    holds: (...si) => find(...si).place !== undefined,
  };
  return [reach, ...sides];
}
