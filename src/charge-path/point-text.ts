import { tableText, type Table } from '../calculation/table.js';
import type { OperatingPoint } from './point-result.js';
import type { Station } from './station.js';

const COLUMNS: readonly { readonly head: string; readonly cell: (station: Station) => string }[] = [
  { head: 'kPa', cell: ({ pressure }) => pressure.in('kPa').toFixed(2) },
  { head: '°C', cell: ({ temperature }) => temperature.in('°C').toFixed(1) },
  { head: 'kg/m³', cell: ({ density }) => density.in('kg/m³').toFixed(3) },
  { head: 'g water/kg', cell: ({ humidityRatio }) => humidityRatio.in('g/kg').toFixed(2) },
  { head: 'g/s', cell: ({ flow }) => flow.in('g/s').toFixed(1) },
];

/** A solved point as a table of its stations and a few lines. */
export function pointText(point: OperatingPoint): string {
  return tableText(pointTable(point));
}

/** The same as a table. */
export function pointTable(point: OperatingPoint): Table {
  const { engineSpeed, compressor, core, engine, boostReading, stations, notes } = point;
  const { pressure, temperature, airPerCycle, dryAirDensity } = point.cylinder;
  return {
    caption: `Operating point at ${engineSpeed.in('rpm').toFixed(0)} rpm`,
    columns: [{ head: 'station', align: 'left' }, ...COLUMNS.map(({ head }) => ({ head, align: 'right' as const }))],
    rows: [
      ...Object.values(stations).map((station) => [station.name, ...COLUMNS.map(({ cell }) => cell(station))]),
      [
        'cylinder',
        pressure.in('kPa').toFixed(2),
        temperature?.in('°C').toFixed(1) ?? '',
        (dryAirDensity.in('kg/m³') * (1 + stations.manifold.humidityRatio.si)).toFixed(3),
        stations.manifold.humidityRatio.in('g/kg').toFixed(2),
        stations.manifold.flow.in('g/s').toFixed(1),
      ],
    ],
    remarks: [
      `compressor: pressure ratio ${compressor.pressureRatio.si.toFixed(3)}, ${compressor.power.in('kW').toFixed(2)} kW; boost gauge ${boostReading.in('kPa').toFixed(1)} kPa`,
      `core: true effectiveness ${percent(core.effectiveness.si)}${wayToAir(core)}, ${core.heat.in('kW').toFixed(2)} kW, cooling air ${core.coolingAirFace.in('°C').toFixed(1)} to ${core.coolingAirBehind.in('°C').toFixed(1)} °C, condensate ${core.condensate.in('g/s').toFixed(2)} g/s`,
      ...recirculationText(point),
      `engine: volumetric efficiency ${percent(engine.volumetricEfficiency.si)}, lambda ${engine.lambda.si.toFixed(3)}, fuel ${engine.fuelFlow.in('g/s').toFixed(2)} g/s, dry air in the cylinders ${dryAirDensity.in('kg/m³').toFixed(3)} kg/m³, ${airPerCycle.in('g').toFixed(3)} g a cycle`,
      `at the crankshaft: ${engine.power.in('kW').toFixed(1)} kW, ${engine.torque.in('N·m').toFixed(1)} N·m, ${engine.brakeMeanEffectivePressure.in('bar').toFixed(2)} bar`,
      ...notes.map(({ message }) => `Note: ${message}`),
    ],
  };
}

/** What share of the air comes back from behind the core. */
function recirculationText({ installation: { inlet, cooling }, core }: OperatingPoint): readonly string[] {
  const air = cooling.by === 'air' ? cooling : cooling.air;
  const shares = [
    ['what the compressor breathes', inlet?.recirculatedShare],
    ['what the face gets', air.recirculatedShare],
  ] as const;
  const told = shares.flatMap(([what, share]) => (share === undefined ? [] : [`${percent(share.si)} of ${what}`]));
  return told.length === 0
    ? []
    : [`air from behind the core, of ${core.coolingAirBehind.in('°C').toFixed(1)} °C: ${told.join(', ')}`];
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

/** How far the charge goes towards the air at the face, which is what people mean by how well a core works. */
function wayToAir({ airSideEffectiveness: share }: OperatingPoint['core']): string {
  return share === undefined ? '' : `, the charge goes ${percent(share.si)} of the way to the air at the face`;
}
