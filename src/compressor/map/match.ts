import { CalculationError, solve } from '../../calculation/index.js';
import { subtract, type Quantity } from '../../units/index.js';
import { requireNames } from '../../units/internal.js';
import { correctedFlow } from '../corrected-flow.js';
import { correctedSpeed } from '../corrected-speed.js';
import type { CompressorMap } from './compressor-map.js';
import { INLET_NAMES, pointFromMap, type CompressorInlet, type CompressorOperatingPoint } from './point-on-map.js';

const NAME = 'matching of engine and compressor';

/** An engine as its compressor sees it: the mass flow of humid air that it takes at a state the compressor delivers. */
export type EngineFlow = (delivered: CompressorOperatingPoint) => Quantity<'mass flow'>;

/**
 * Matches an engine to a compressor map at a pressure ratio, which a boost control holds: finds the flow that the engine takes and the
 * compressor gives.
 *
 * By hand this takes two steps, or more: guess an efficiency for the temperature, from it the density and the flow; then read the
 * efficiency at that flow, and do it again. Here both hold at once, and the answer carries its history: `explain`, `uncertainty` and
 * `whatIf` go through it.
 *
 * @param map - the map.
 * @param state - the inlet, the pressure ratio, and `engineFlow`: what the engine takes of what is delivered. Put the cooler, its loss
 * and the engine's breathing there, in quantities.
 * @returns The point on the map at which both agree.
 * @throws CalculationError if the engine takes less than the surge flow or more than the choke flow of the map at that pressure ratio,
 * saying which.
 * @example
 * const matched = matchEngineToMap(map, {
 *   inletTemperature: temperature(18, '°C'), inletPressure: absolutePressure(93, 'kPa'), pressureRatio: ratio(2.2),
 *   engineFlow: ({ outletPressure, outletTemperature }) => speedDensityAirflow({
 *     volumetricEfficiency: percent(95), manifoldPressure: subtract(outletPressure, pressureDifference(7, 'kPa')),
 *     chargeTemperature: cooledTemperature({ effectiveness: percent(75), hotInlet: outletTemperature, coolantInlet: temperature(18, '°C') }),
 *     sweptVolume: volume(1.8, 'L'), engineSpeed: rotationalSpeed(6000, 'rpm'),
 *   }),
 * });
 * matched.massFlow.in('g/s') //=> 186.07
 */
export function matchEngineToMap(
  map: CompressorMap,
  state: CompressorInlet & { readonly pressureRatio: Quantity<'ratio'>; readonly engineFlow: EngineFlow },
): CompressorOperatingPoint {
  requireNames(NAME, state, [...INLET_NAMES, 'pressureRatio', 'engineFlow']);
  const { pressureRatio, engineFlow } = state;
  const between = [map.lowestFlow({ pressureRatio }), map.highestFlow({ pressureRatio })] as const;
  return matched(map, state, engineFlow, between, `at pressure ratio ${String(pressureRatio)}`, (flow) =>
    pointFromMap(map, state, { correctedFlow: flow, pressureRatio }),
  );
}

/**
 * Matches an engine to a compressor map at a speed of the wheel, which a belt or a known turbine holds: finds the flow and the pressure
 * ratio at which the engine takes what the compressor gives.
 *
 * @param map - the map.
 * @param state - the inlet, the speed of the wheel, and `engineFlow`: what the engine takes of what is delivered.
 * @returns The point on the map at which both agree.
 * @throws CalculationError if the engine takes less than the surge flow or more than the choke flow of the map at that speed, saying which.
 * @example
 * const belt = matchEngineToMapAtSpeed(map, { ...inlet, speed: rotationalSpeed(130000, 'rpm'), engineFlow });
 * belt.pressureRatio.in('1') //=> 2.15188
 */
export function matchEngineToMapAtSpeed(
  map: CompressorMap,
  state: CompressorInlet & { readonly speed: Quantity<'rotational speed'>; readonly engineFlow: EngineFlow },
): CompressorOperatingPoint {
  requireNames(NAME, state, [...INLET_NAMES, 'speed', 'engineFlow']);
  const { inletTemperature, speed, engineFlow } = state;
  const { referenceTemperature } = map.reference;
  const onMap = { correctedSpeed: correctedSpeed({ speed, inletTemperature, referenceTemperature }) };
  const between = [map.surgeFlowAtSpeed(onMap), map.chokeFlow(onMap)] as const;
  return matched(map, state, engineFlow, between, `at ${String(speed)}`, (flow) => {
    const pressureRatio = map.pressureRatio({ correctedFlow: flow, ...onMap });
    return pointFromMap(map, state, { correctedFlow: flow, pressureRatio, ...onMap, speed });
  });
}

function matched(
  map: CompressorMap,
  inlet: CompressorInlet,
  engineFlow: EngineFlow,
  between: readonly [Quantity<'mass flow'>, Quantity<'mass flow'>],
  where: string,
  pointAt: (flow: Quantity<'mass flow'>) => CompressorOperatingPoint,
): CompressorOperatingPoint {
  const { inletTemperature, inletPressure } = inlet;
  const taken = (point: CompressorOperatingPoint): Quantity<'mass flow'> =>
    correctedFlow({ massFlow: engineFlow(point), inletTemperature, inletPressure, ...map.reference });
  const [low, high] = between;
  const [atSurge, atChoke] = between.map((flow) => taken(pointAt(flow))) as [typeof low, typeof high];
  if (atSurge.si < low.si) throw noMatch(map, `${String(atSurge)} where it surges below ${String(low)}`, where, LESS);
  if (atChoke.si > high.si) throw noMatch(map, `${String(atChoke)} where it ends at ${String(high)}`, where, MORE);
  const { point } = solve({ label: 'corrected flow', kind: 'mass flow', unit: low.unit as 'kg/s', between }, (flow) => {
    const trial = pointAt(flow);
    return { residual: subtract(taken(trial), flow), point: trial };
  });
  return point;
}

const LESS = 'The compressor is too large for the engine there, or the pressure ratio too high.';
const MORE = 'The compressor is too small for the engine there.';

function noMatch(map: CompressorMap, got: string, where: string, mend: string): CalculationError {
  const need = `an engine that takes a flow on ${map.name} ${where}`;
  return new CalculationError(NAME, [{ code: 'no answer', input: '', need, got, mend }]);
}
