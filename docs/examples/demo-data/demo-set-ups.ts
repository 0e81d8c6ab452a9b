/**
 * The four invented set-ups of the demo day: what truly differs between them, and how each one happened to be logged.
 */

/** Every channel a pull has, whether or not a logger wrote it. */
export type Channel =
  | 'time'
  | 'clock'
  | 'engineSpeed'
  | 'torque'
  | 'boost'
  | 'manifoldPressure'
  | 'chargeTemperature'
  | 'compressorOutlet'
  | 'faceTemperature'
  | 'room'
  | 'barometer'
  | 'humidity'
  | 'lambda'
  | 'airFlow'
  | 'oil'
  | 'coolant'
  | 'fuelPressure';

export interface SetUp {
  folder: string;
  /** Charge cooler: conductances in W/K on each side at 0.16 kg/s of charge and 0.55 kg/s of cooling air. */
  core: { chargeSide: number; airSide: number; metalMass: number; pressureLoss: number };
  /**
   * Cooling air through the core in kg/s, how much warmer than the room it arrives, and the part of the rise of the air
   * leaving the core that comes round to the face again.
   */
  cooling: { flow: number; warming: number; recirculation: number };
  /** Pressure loss in Pa at 0.16 kg/s, and how much warmer than the room the air arrives at the compressor. */
  inlet: { pressureLoss: number; warming: number };
  log: LogHabit;
}

export interface LogHabit {
  rate: number;
  separator: string;
  decimal: string;
  lineEnd: string;
  byteOrderMark: boolean;
  units: 'parentheses' | 'brackets' | 'own row';
  blankCells: number;
  columns: readonly Column[];
}

/** Channel, header word, unit as written (none for lambda in some logs), step of the logger. */
type Column = readonly [channel: Channel, word: string, unit: string, step: number];

const stockCore = { chargeSide: 440, airSide: 480, metalMass: 3.4, pressureLoss: 7400 };
const tallCore = { chargeSide: 640, airSide: 720, metalMass: 4.9, pressureLoss: 6000 };
const openFan = { flow: 0.5, warming: 2.5, recirculation: 0.1 };
const longHose = { pressureLoss: 1500, warming: 3 };

export const setUps: readonly SetUp[] = [
  {
    folder: 'stock core',
    core: stockCore,
    cooling: openFan,
    inlet: longHose,
    log: {
      rate: 20,
      separator: ',',
      decimal: '.',
      lineEnd: '\n',
      byteOrderMark: false,
      units: 'parentheses',
      blankCells: 0,
      columns: [
        ['time', 'Time', 's', 0.01],
        ['clock', 'Clock', 's', 0.01],
        ['engineSpeed', 'Engine speed', 'rpm', 1],
        ['torque', 'Torque', 'lb-ft', 0.1],
        ['boost', 'Boost', 'psi', 0.01],
        ['chargeTemperature', 'IAT', 'F', 0.1],
        ['compressorOutlet', 'Compressor outlet temp', 'F', 0.5],
        ['faceTemperature', 'Core face temp', 'F', 0.2],
        ['room', 'Room temp', 'F', 0.1],
        ['barometer', 'Barometer', 'inHg', 0.01],
        ['humidity', 'Humidity', '%', 0.5],
        ['lambda', 'Lambda', '', 0.001],
        ['airFlow', 'Air mass flow', 'lb/min', 0.01],
        ['oil', 'Oil temp', 'F', 0.5],
        ['coolant', 'Coolant temp', 'F', 0.5],
        ['fuelPressure', 'Fuel pressure', 'psi', 0.1],
      ],
    },
  },
  {
    folder: 'tall core',
    core: tallCore,
    cooling: openFan,
    inlet: longHose,
    log: {
      rate: 25,
      separator: ';',
      decimal: ',',
      lineEnd: '\n',
      byteOrderMark: false,
      units: 'brackets',
      blankCells: 0,
      columns: [
        ['time', 'Time', 's', 0.01],
        ['clock', 'Clock', 's', 0.01],
        ['engineSpeed', 'RPM', '1/min', 1],
        ['torque', 'Torque', 'Nm', 0.1],
        ['boost', 'Boost', 'bar', 0.001],
        ['manifoldPressure', 'MAP', 'kPa', 0.1],
        ['chargeTemperature', 'Charge temp', '°C', 0.1],
        ['compressorOutlet', 'Compressor outlet temp', '°C', 0.2],
        ['faceTemperature', 'Core face temp', '°C', 0.1],
        ['room', 'Room temp', '°C', 0.1],
        ['barometer', 'Barometer', 'hPa', 0.1],
        ['humidity', 'Relative humidity', '%', 0.1],
        ['lambda', 'Lambda', '-', 0.001],
        ['airFlow', 'Air mass flow', 'g/s', 0.1],
        ['oil', 'Oil temp', '°C', 0.2],
        ['coolant', 'Coolant temp', '°C', 0.2],
        ['fuelPressure', 'Fuel pressure', 'bar', 0.01],
      ],
    },
  },
  {
    folder: 'tall core + duct',
    core: tallCore,
    cooling: { flow: 0.62, warming: 1.2, recirculation: 0.04 },
    inlet: longHose,
    log: {
      rate: 20,
      separator: ',',
      decimal: '.',
      lineEnd: '\n',
      byteOrderMark: false,
      units: 'own row',
      blankCells: 0,
      columns: [
        ['time', 'Time', 's', 0.01],
        ['clock', 'Clock', 's', 0.01],
        ['engineSpeed', 'Engine speed', 'rpm', 1],
        ['torque', 'Hub torque', 'N m', 0.1],
        ['boost', 'Boost', 'kPa', 0.1],
        ['chargeTemperature', 'Charge temperature', 'degC', 0.1],
        ['compressorOutlet', 'Compressor outlet temperature', 'degC', 0.2],
        ['faceTemperature', 'Core face temperature', 'degC', 0.1],
        ['room', 'Room temperature', 'degC', 0.1],
        ['barometer', 'Barometer', 'hPa', 0.1],
        ['humidity', 'Relative humidity', '%', 0.1],
        ['lambda', 'Lambda', '-', 0.001],
        ['airFlow', 'Air mass flow', 'g/s', 0.1],
        ['oil', 'Oil temperature', 'degC', 0.2],
        ['coolant', 'Coolant temperature', 'degC', 0.2],
        ['fuelPressure', 'Fuel pressure', 'kPa', 1],
      ],
    },
  },
  {
    folder: 'short inlet hose',
    core: stockCore,
    cooling: openFan,
    inlet: { pressureLoss: 1000, warming: 3.4 },
    log: {
      rate: 25,
      separator: ',',
      decimal: '.',
      lineEnd: '\r\n',
      byteOrderMark: true,
      units: 'parentheses',
      blankCells: 14,
      columns: [
        ['time', 'Time', 's', 0.01],
        ['clock', 'Clock', 's', 0.01],
        ['engineSpeed', 'Engine speed', 'rpm', 1],
        ['torque', 'Torque', 'N m', 0.1],
        ['boost', 'Boost', 'bar', 0.001],
        ['chargeTemperature', 'Charge temp', '°C', 0.1],
        ['compressorOutlet', 'Compressor outlet temp', '°C', 0.2],
        ['faceTemperature', 'Core face temp', '°C', 0.1],
        ['room', 'Room temp', '°C', 0.1],
        ['barometer', 'Barometer', 'hPa', 0.1],
        ['humidity', 'Humidity', '%', 0.1],
        ['lambda', 'Lambda', '', 0.001],
        ['airFlow', 'Air mass flow', 'g/s', 0.1],
        ['oil', 'Oil temp', '°C', 0.2],
        ['coolant', 'Coolant temp', '°C', 0.2],
        ['fuelPressure', 'Fuel pressure', 'bar', 0.01],
      ],
    },
  },
];
