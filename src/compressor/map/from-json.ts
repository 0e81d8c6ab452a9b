import { CalculationError, type Problem } from '../../calculation/index.js';
import { describe, unknownNames } from '../../units/internal.js';
import { massFlow, parse, ratio, rotationalSpeed, UnitError } from '../../units/index.js';
import { compressorMap, type CompressorMap, type CompressorMapOptions } from './compressor-map.js';
import type { CompressorMapRecord } from './record.js';
import type { CompressorMapData, CompressorMapPoint, CompressorSpeedLine, SurgePoint } from './data.js';

const NAME = 'compressor map from JSON';
const RECORD_NAMES = [
  'name',
  'reference',
  'units',
  'speedLines',
  'surgeLine',
] as const satisfies (keyof CompressorMapRecord)[];
/** A list of a hundred mistakes helps nobody. */
const MOST_PROBLEMS = 8;

/**
 * Reads a compressor map from JSON, as text or as the value it holds: the form that `JSON.stringify(map)` writes.
 *
 * @returns The map.
 * @throws CalculationError naming each place of the data that cannot be read, and everything that {@link compressorMap} refuses.
 * @example
 * compressorMapFromJson(JSON.stringify(map)).name //=> 'hill-climb compressor'
 */
export function compressorMapFromJson(json: unknown, options: CompressorMapOptions = {}): CompressorMap {
  const reader = new Reader();
  const data = reader.map(typeof json === 'string' ? parsed(json) : json);
  if (data === undefined || reader.problems.length > 0)
    throw new CalculationError(NAME, reader.problems.slice(0, MOST_PROBLEMS));
  return compressorMap(data, options);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const got = error instanceof Error ? error.message : String(error);
    throw new CalculationError(NAME, [{ code: 'kind', input: 'json', need: 'a text in JSON', got, mend: '' }]);
  }
}

type Fields = Readonly<Record<string, unknown>>;

/** Reads what can be read; where something cannot, remembers the problem and goes on, so that all are told at once. */
class Reader {
  readonly problems: Problem[] = [];

  map(value: unknown): CompressorMapData | undefined {
    const record = this.#fields('json', value);
    this.problems.push(...unknownNames(record, RECORD_NAMES));
    const reference = this.#fields('reference', record['reference']);
    const units = this.#fields('units', record['units']);
    const referenceTemperature = this.#parsed('reference.temperature', reference['temperature'], 'temperature');
    const referencePressure = this.#parsed('reference.pressure', reference['pressure'], 'absolute pressure');
    const speedUnit = this.#unit(
      'units.correctedSpeed',
      'a unit of speed, such as rpm',
      units['correctedSpeed'],
      rotationalSpeed,
    );
    const flowUnit = this.#unit(
      'units.correctedFlow',
      'a unit of mass flow, such as kg/s',
      units['correctedFlow'],
      massFlow,
    );
    if (!referenceTemperature || !referencePressure || !speedUnit || !flowUnit) return undefined;

    const point = (path: string, given: unknown): CompressorMapPoint => {
      const [flow, pressureRatio, efficiency] = this.#numbers(path, given, 3) as [number, number, number];
      return { ...surge(flow, pressureRatio), isentropicEfficiency: ratio(efficiency) };
    };
    const surge = (flow: number, pressureRatio: number): SurgePoint => ({
      correctedFlow: massFlow(flow, flowUnit),
      pressureRatio: ratio(pressureRatio),
    });
    const line = (path: string, given: unknown): CompressorSpeedLine => {
      const { correctedSpeed, points } = this.#fields(path, given);
      return {
        correctedSpeed: rotationalSpeed(this.#number(`${path}.correctedSpeed`, correctedSpeed), speedUnit),
        points: this.#list(`${path}.points`, points, point),
      };
    };
    const { name, speedLines, surgeLine } = record;
    if (name !== undefined && typeof name !== 'string') this.#refuse('name', 'a text', name);
    return {
      ...(typeof name === 'string' ? { name } : {}),
      reference: { referenceTemperature, referencePressure },
      speedLines: this.#list('speedLines', speedLines, line),
      ...(surgeLine === undefined
        ? {}
        : {
            surgeLine: this.#list('surgeLine', surgeLine, (path, given) => {
              const [flow, pressureRatio] = this.#numbers(path, given, 2) as [number, number];
              return surge(flow, pressureRatio);
            }),
          }),
    };
  }

  #refuse(input: string, need: string, got: unknown): undefined {
    const code = got === undefined ? 'missing' : 'kind';
    this.problems.push({ code, input, need, got: describe(got), mend: '' });
    return undefined;
  }

  #fields(path: string, given: unknown): Fields {
    if (typeof given === 'object' && given !== null && !Array.isArray(given)) return given as Fields;
    this.#refuse(path, 'an object', given);
    return {};
  }

  #list<T>(path: string, given: unknown, each: (path: string, entry: unknown) => T): T[] {
    if (Array.isArray(given)) return given.map((entry: unknown, i) => each(`${path}[${i}]`, entry));
    this.#refuse(path, 'a list', given);
    return [];
  }

  /** A number, or 1 in the place of one that is refused, so that reading can go on. */
  #number(path: string, given: unknown): number {
    if (typeof given === 'number' && Number.isFinite(given)) return given;
    this.#refuse(path, 'a number', given);
    return 1;
  }

  #numbers(path: string, given: unknown, count: number): number[] {
    if (Array.isArray(given) && given.length === count)
      return given.map((entry: unknown, i) => this.#number(`${path}[${i}]`, entry));
    this.#refuse(path, `a list of ${count} numbers`, given);
    return new Array<number>(count).fill(1);
  }

  #parsed<K extends 'temperature' | 'absolute pressure'>(path: string, given: unknown, kind: K) {
    const need = `a text with a unit, ${kind === 'temperature' ? '298.15 K' : '100 kPa'} for instance`;
    if (typeof given !== 'string') return this.#refuse(path, need, given);
    return this.#unlessRefused(path, need, given, () => parse(kind, given));
  }

  /** A unit, tried out on one of it. */
  #unit<U extends string>(
    path: string,
    need: string,
    given: unknown,
    make: (value: number, unit: U) => unknown,
  ): U | undefined {
    if (typeof given !== 'string') return this.#refuse(path, need, given);
    return this.#unlessRefused(path, need, given, () => {
      make(1, given as U);
      return given as U;
    });
  }

  #unlessRefused<T>(path: string, need: string, given: unknown, make: () => T): T | undefined {
    try {
      return make();
    } catch (error) {
      if (error instanceof UnitError || error instanceof CalculationError) return this.#refuse(path, need, given);
      throw error;
    }
  }
}
