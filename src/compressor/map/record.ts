import type { Quantity } from '../../units/index.js';
import type { CompressorMapData, SurgePoint } from './data.js';

/** A compressor map as plain data, for files and for drawing up by hand. */
export interface CompressorMapRecord {
  readonly name: string;
  /** Texts with units, such as `298.15 K` and `100 kPa`. */
  readonly reference: { readonly temperature: string; readonly pressure: string };
  /** The units of all numbers below. */
  readonly units: { readonly correctedSpeed: string; readonly correctedFlow: string };
  readonly speedLines: readonly {
    readonly correctedSpeed: number;
    /** Corrected flow, pressure ratio, isentropic efficiency as a fraction. */
    readonly points: readonly (readonly [correctedFlow: number, pressureRatio: number, isentropicEfficiency: number])[];
  }[];
  /** Corrected flow, pressure ratio. */
  readonly surgeLine?: readonly (readonly [correctedFlow: number, pressureRatio: number])[];
}

/** A number as it was given: a journey through SI units may have cost it its last digit, which nobody types. */
const written = (value: number): number => Number(value.toPrecision(15));

/** The map as data, its numbers in the units of its first point. */
export function recordOf({
  name,
  reference,
  speedLines,
  surgeLine,
}: Required<Omit<CompressorMapData, 'surgeLine'>> & {
  readonly surgeLine: readonly SurgePoint[] | undefined;
}): CompressorMapRecord {
  const speedUnit = speedLines[0]!.correctedSpeed.unit as 'rpm';
  const flowUnit = speedLines[0]!.points[0]!.correctedFlow.unit as 'kg/s';
  const text = (quantity: Quantity): string => `${written(quantity.in(quantity.unit as never))} ${quantity.unit}`;
  return {
    name,
    reference: { temperature: text(reference.referenceTemperature), pressure: text(reference.referencePressure) },
    units: { correctedSpeed: speedUnit, correctedFlow: flowUnit },
    speedLines: speedLines.map(({ correctedSpeed, points }) => ({
      correctedSpeed: written(correctedSpeed.in(speedUnit)),
      points: points.map(
        ({ correctedFlow, pressureRatio, isentropicEfficiency }) =>
          [written(correctedFlow.in(flowUnit)), pressureRatio.si, isentropicEfficiency.si] as const,
      ),
    })),
    ...(surgeLine
      ? {
          surgeLine: surgeLine.map(
            ({ correctedFlow, pressureRatio }) => [written(correctedFlow.in(flowUnit)), pressureRatio.si] as const,
          ),
        }
      : {}),
  };
}
