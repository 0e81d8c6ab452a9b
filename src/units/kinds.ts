/**
 * Every kind of quantity and its units. A unit is its size in the kind's SI unit: the double nearest to the exact definition in
 * `exact.ts`, which a test proves. A pair is `[size, offset]`: SI = (value + offset) * size.
 *
 * Kinds are named, not derived from dimensions, because torque is not energy and a gauge pressure is not an absolute one.
 */
const PRESSURE_UNITS = {
  Pa: 1,
  hPa: 100,
  kPa: 1000,
  MPa: 1e6,
  bar: 1e5,
  mbar: 100,
  psi: 6894.757293168362,
  atm: 101325,
  torr: 133.32236842105263,
  mmHg: 133.322387415,
  inHg: 3386.388640341,
  'inHg(60F)': 3376.85,
  inH2O: 249.08891,
  'inH2O(4C)': 249.082,
  'inH2O(60F)': 248.84,
  'kgf/cm²': 98066.5,
} as const;

const PRESSURE_SPELLINGS = {
  'kgf/cm2': 'kgf/cm²',
  'kg/cm2': 'kgf/cm²',
  mb: 'mbar',
  Torr: 'torr',
  '"Hg': 'inHg',
  '"H2O': 'inH2O',
  'lbf/in2': 'psi',
} as const;

const GAUGE = 'it is a gauge pressure: absolute(gaugePressure(value, unit), barometer)';
const ABSOLUTE = 'it is an absolute pressure: gauge(absolutePressure(value, unit), barometer)';

const GALLONS_PER_HOUR = 'write gal(US)/h or gal(imp)/h: they differ by a fifth';

const TEMPERATURE_SPELLINGS = {
  degC: '°C',
  C: '°C',
  Celsius: '°C',
  degF: '°F',
  F: '°F',
  Fahrenheit: '°F',
  degR: '°R',
  R: '°R',
  kelvin: 'K',
} as const;

const RATIO_UNITS = { '1': 1, '%': 0.01 } as const;

export const KINDS = {
  temperature: {
    units: { K: 1, '°C': [1, 273.15], '°F': [5 / 9, 459.67], '°R': 5 / 9 },
    spellings: TEMPERATURE_SPELLINGS,
    difference: 'temperature difference',
    minimum: 0,
  },
  'temperature difference': {
    units: { K: 1, '°C': 1, '°F': 5 / 9, '°R': 5 / 9 },
    spellings: TEMPERATURE_SPELLINGS,
    dimension: 'temperature',
  },
  'absolute pressure': {
    units: PRESSURE_UNITS,
    spellings: { ...PRESSURE_SPELLINGS, psia: 'psi', bara: 'bar', 'bar(a)': 'bar', kPaa: 'kPa', 'kPa(a)': 'kPa' },
    ambiguous: { psig: GAUGE, barg: GAUGE, 'bar(g)': GAUGE, kPag: GAUGE, 'kPa(g)': GAUGE },
    dimension: 'pressure',
    difference: 'pressure difference',
    minimum: 0,
  },
  'gauge pressure': {
    units: PRESSURE_UNITS,
    spellings: { ...PRESSURE_SPELLINGS, psig: 'psi', barg: 'bar', 'bar(g)': 'bar', kPag: 'kPa', 'kPa(g)': 'kPa' },
    ambiguous: { psia: ABSOLUTE, bara: ABSOLUTE, 'bar(a)': ABSOLUTE, kPaa: ABSOLUTE, 'kPa(a)': ABSOLUTE },
    dimension: 'pressure',
    difference: 'pressure difference',
  },
  'pressure difference': {
    units: PRESSURE_UNITS,
    spellings: { ...PRESSURE_SPELLINGS, psid: 'psi' },
    dimension: 'pressure',
  },
  'sea-level pressure': {
    units: PRESSURE_UNITS,
    spellings: PRESSURE_SPELLINGS,
    dimension: 'pressure',
    difference: 'pressure difference',
    minimum: 0,
  },
  'mean effective pressure': {
    units: { Pa: 1, kPa: 1000, MPa: 1e6, bar: 1e5, psi: 6894.757293168362, 'kgf/cm²': 98066.5 },
    spellings: { 'kgf/cm2': 'kgf/cm²', 'kg/cm2': 'kgf/cm²' },
    dimension: 'pressure',
  },
  ratio: { units: RATIO_UNITS, spellings: { percent: '%' }, dimension: 'number' },
  'relative humidity': {
    units: RATIO_UNITS,
    spellings: { percent: '%', '%RH': '%', '% RH': '%' },
    dimension: 'number',
  },
  'humidity ratio': {
    units: { 'kg/kg': 1, 'g/kg': 0.001, 'gr/lb': 1 / 7000 },
    spellings: { 'grains/lb': 'gr/lb', 'lb/lb': 'kg/kg' },
    dimension: 'number',
  },
  'mole fraction': { units: { '1': 1, '%': 0.01, ppm: 1e-6 }, spellings: { percent: '%' }, dimension: 'number' },
  'mass fraction': { units: { '1': 1, '%': 0.01, ppm: 1e-6 }, spellings: { percent: '%' }, dimension: 'number' },
  'volume fraction': { units: { '1': 1, '%': 0.01 }, spellings: { percent: '%' }, dimension: 'number' },
  'air-fuel ratio': {
    units: { '1': 1 },
    spellings: { ':1': '1', 'kg/kg': '1', AFR: '1', 'A/F': '1', '-': '1' },
    dimension: 'number',
  },
  lambda: { units: { '1': 1 }, spellings: { lambda: '1', λ: '1', '-': '1' }, dimension: 'number' },
  'equivalence ratio': { units: { '1': 1 }, spellings: { phi: '1', φ: '1', '-': '1' }, dimension: 'number' },
  'octane number': { units: { '1': 1 }, spellings: { RON: '1', MON: '1' }, dimension: 'number' },
  density: {
    units: {
      'kg/m³': 1,
      'kg/L': 1000,
      'g/cm³': 1000,
      'mg/L': 0.001,
      'lb/ft³': 16.018463373960138,
      'lb/gal(US)': 119.82642731689663,
    },
    spellings: { 'kg/m3': 'kg/m³', 'kg/l': 'kg/L', 'g/cm3': 'g/cm³', 'g/cc': 'g/cm³', 'lb/ft3': 'lb/ft³' },
    ambiguous: { 'lb/gal': 'write lb/gal(US); an imperial gallon is a fifth larger' },
    minimum: 0,
  },
  mass: {
    units: { kg: 1, g: 0.001, mg: 1e-6, lb: 0.45359237, oz: 0.028349523125 },
    spellings: { lbs: 'lb', lbm: 'lb' },
  },
  'mass flow': {
    units: {
      'kg/s': 1,
      'g/s': 0.001,
      'kg/min': 1 / 60,
      'kg/h': 1 / 3600,
      'g/min': 1 / 60000,
      'lb/min': 0.007559872833333333,
      'lb/h': 0.00012599788055555556,
      'lb/s': 0.45359237,
    },
    spellings: { 'lbs/min': 'lb/min', 'lb/hr': 'lb/h', 'lbs/hr': 'lb/h', 'kg/hr': 'kg/h', 'g/sec': 'g/s', pph: 'lb/h' },
  },
  volume: {
    units: {
      'm³': 1,
      L: 0.001,
      'cm³': 1e-6,
      'mm³': 1e-9,
      'in³': 1.6387064e-5,
      'ft³': 0.028316846592,
      'gal(US)': 0.003785411784,
      'gal(imp)': 0.00454609,
    },
    spellings: {
      m3: 'm³',
      l: 'L',
      cc: 'cm³',
      cm3: 'cm³',
      ml: 'cm³',
      mL: 'cm³',
      mm3: 'mm³',
      'cu in': 'in³',
      in3: 'in³',
      ci: 'in³',
      ft3: 'ft³',
      'cu ft': 'ft³',
    },
    ambiguous: { gal: 'write gal(US) or gal(imp): they differ by a fifth' },
  },
  'volume flow': {
    units: {
      'm³/s': 1,
      'm³/h': 1 / 3600,
      'L/s': 0.001,
      'L/min': 0.001 / 60,
      'L/h': 0.001 / 3600,
      'cm³/min': 1e-6 / 60,
      cfm: 0.0004719474432,
      'gal(US)/min': 6.30901964e-5,
      'gal(US)/h': 1.0515032733333334e-6,
      'gal(imp)/h': 1.2628027777777779e-6,
    },
    spellings: {
      'm3/s': 'm³/s',
      'm3/h': 'm³/h',
      'l/s': 'L/s',
      'l/min': 'L/min',
      'l/h': 'L/h',
      lpm: 'L/min',
      'cc/min': 'cm³/min',
      'cm3/min': 'cm³/min',
      CFM: 'cfm',
      'ft3/min': 'cfm',
    },
    ambiguous: {
      gph: GALLONS_PER_HOUR,
      'gal/h': GALLONS_PER_HOUR,
      'gal/hr': GALLONS_PER_HOUR,
      scfm: 'scfm is a standard volume flow, that is a mass flow: standardVolumeFlow(value, "scfm(60F)" | "scfm(68F)" | ...)',
    },
  },
  'standard volume flow': {
    // A standard volume is a mass of air written as a volume: SI is kg/s, and every unit carries its reference state. That air is dry
    // but for scfm(68F), the compressed-air trade's: 36 % relative humidity, vapour counted, 0.3 % lighter than dry air.
    units: {
      'Nm³/h(0C)': 0.00035897769069938757,
      'L/min(0C)': 2.1538661441963253e-5,
      'L/min(15C)': 2.041744012796204e-5,
      'L/min(20C)': 2.0069197928951946e-5,
      'scfm(60F)': 0.000577046983839947,
      'scfm(68F)': 0.0005666677669976832,
      'scfm(70F)': 0.0005661267909058749,
      'scfm(20C,1bar)': 0.0005608649385429226,
    },
    spellings: { 'Nm3/h(0C)': 'Nm³/h(0C)' },
    ambiguous: {
      scfm: 'there is no single standard: write scfm(60F), scfm(68F), scfm(70F) or scfm(20C,1bar)',
      'Nm³/h': 'write Nm³/h(0C): some makers mean another temperature',
      slpm: 'there is no single standard: write L/min(0C), L/min(15C) or L/min(20C)',
    },
    dimension: 'mass flow',
  },
  length: {
    units: { m: 1, mm: 0.001, cm: 0.01, km: 1000, in: 0.0254, ft: 0.3048 },
    spellings: { '"': 'in', inch: 'in', feet: 'ft' },
  },
  area: {
    units: { 'm²': 1, 'cm²': 1e-4, 'mm²': 1e-6, 'in²': 0.00064516, 'ft²': 0.09290304 },
    spellings: { m2: 'm²', cm2: 'cm²', mm2: 'mm²', in2: 'in²', ft2: 'ft²' },
  },
  time: {
    units: { s: 1, ms: 0.001, min: 60, h: 3600 },
    spellings: { sec: 's', seconds: 's', msec: 'ms', hr: 'h' },
  },
  angle: {
    units: { rad: 1, '°': 0.017453292519943295 },
    // Degrees of the crank are degrees; before top dead centre is how spark is counted. After it (ATDC) the sign is another.
    spellings: {
      ...{ deg: '°', degree: '°', degrees: '°', º: '°', degs: '°' },
      ...{ '°CA': '°', 'deg CA': '°', '°crank': '°', 'deg crank': '°' },
      ...{
        '°BTDC': '°',
        'deg BTDC': '°',
        'degrees BTDC': '°',
        '°CA BTDC': '°',
        'deg CA BTDC': '°',
        'deg before TDC': '°',
      },
    },
  },
  'rotational speed': {
    // SI is revolutions per second (ISO 80000-3, rotational frequency), which is how engine formulas count.
    units: { '1/s': 1, rpm: 1 / 60, 'rad/s': 0.15915494309189535 },
    spellings: {
      ...{ '1/min': 'rpm', 'min-1': 'rpm', 'min⁻¹': 'rpm', RPM: 'rpm', 'rev/min': 'rpm', 'r/min': 'rpm' },
      ...{ 'U/min': 'rpm', 'tr/min': 'rpm', 'rev/s': '1/s', 's-1': '1/s' },
    },
  },
  'rotational acceleration': {
    units: { '1/s²': 1, 'rpm/s': 1 / 60, 'rad/s²': 0.15915494309189535 },
    spellings: { '1/s2': '1/s²', 'rad/s2': 'rad/s²' },
  },
  speed: {
    units: { 'm/s': 1, 'km/h': 1 / 3.6, mph: 0.44704, 'ft/s': 0.3048, 'ft/min': 0.00508 },
    spellings: { kph: 'km/h', kmh: 'km/h', Mph: 'mph', 'mi/h': 'mph', fpm: 'ft/min' },
  },
  torque: {
    units: { 'N·m': 1, 'lb·ft': 1.3558179483314003, 'lb·in': 0.1129848290276167, 'kgf·m': 9.80665 },
    spellings: {
      'N m': 'N·m',
      Nm: 'N·m',
      'N-m': 'N·m',
      'lb-ft': 'lb·ft',
      'lb ft': 'lb·ft',
      'ft-lb': 'lb·ft',
      'ft·lbf': 'lb·ft',
      'lbf·ft': 'lb·ft',
      'lbf-ft': 'lb·ft',
      'ft-lbs': 'lb·ft',
      'lbs-ft': 'lb·ft',
      'lb-in': 'lb·in',
      'in-lb': 'lb·in',
      'kgf m': 'kgf·m',
      'kgf-m': 'kgf·m',
      'kg·m': 'kgf·m',
      mkg: 'kgf·m',
      mkp: 'kgf·m',
    },
  },
  force: {
    units: { N: 1, kN: 1000, lbf: 4.4482216152605, kgf: 9.80665 },
    spellings: {},
  },
  power: {
    units: {
      W: 1,
      kW: 1000,
      hp: 745.6998715822702,
      PS: 735.49875,
      'hp(electric)': 746,
      'Btu/h': 0.2930710701722222,
      'Btu/min': 17.584264210333334,
    },
    spellings: {
      'hp(mechanical)': 'hp',
      bhp: 'hp',
      whp: 'hp',
      HP: 'hp',
      'hp(metric)': 'PS',
      cv: 'PS',
      CV: 'PS',
      ch: 'PS',
      ps: 'PS',
      'Btu/hr': 'Btu/h',
      'BTU/h': 'Btu/h',
    },
  },
  energy: {
    units: {
      J: 1,
      kJ: 1000,
      MJ: 1e6,
      kWh: 3.6e6,
      Btu: 1055.05585262,
      'Btu(th)': 1054.3502644888888,
      'Btu(59F)': 1054.804,
      'cal(th)': 4.184,
      'ft·lbf': 1.3558179483314003,
    },
    spellings: { 'Btu(IT)': 'Btu', BTU: 'Btu', 'ft-lbf': 'ft·lbf', 'kW·h': 'kWh' },
    ambiguous: { cal: 'write cal(th), which is 4.184 J', kcal: 'write the energy in kJ' },
  },
  'specific energy': {
    units: { 'J/kg': 1, 'kJ/kg': 1000, 'MJ/kg': 1e6, 'Btu/lb': 2326 },
    spellings: { 'BTU/lb': 'Btu/lb' },
  },
  'specific heat capacity': {
    units: { 'J/(kg·K)': 1, 'kJ/(kg·K)': 1000, 'Btu/(lb·°F)': 4186.8 },
    spellings: { 'J/(kg K)': 'J/(kg·K)', 'kJ/(kg K)': 'kJ/(kg·K)', 'J/kgK': 'J/(kg·K)', 'Btu/(lb F)': 'Btu/(lb·°F)' },
  },
  'specific gas constant': {
    units: { 'J/(kg·K)': 1 },
    spellings: { 'J/(kg K)': 'J/(kg·K)', 'J/kgK': 'J/(kg·K)' },
    dimension: 'specific heat capacity',
  },
  'heat capacity': { units: { 'J/K': 1, 'kJ/K': 1000 }, spellings: {} },
  'heat capacity rate': { units: { 'W/K': 1, 'kW/K': 1000 }, spellings: {}, dimension: 'conductance' },
  'thermal conductance': { units: { 'W/K': 1, 'kW/K': 1000 }, spellings: {}, dimension: 'conductance' },
  'specific fuel consumption': {
    units: { 'kg/J': 1, 'g/kWh': 2.7777777777777777e-10, 'lb/(hp·h)': 1.6896594106715585e-7 },
    spellings: { 'g/(kW·h)': 'g/kWh', 'g/(kW h)': 'g/kWh', 'lb/hp-hr': 'lb/(hp·h)', 'lb/(hp h)': 'lb/(hp·h)' },
  },
  'molar mass': { units: { 'kg/mol': 1, 'g/mol': 0.001 }, spellings: {} },
  'moment of inertia': {
    units: { 'kg·m²': 1, 'lb·ft²': 0.0421401100938048 },
    spellings: { 'kg m2': 'kg·m²', kgm2: 'kg·m²', 'kg·m2': 'kg·m²', 'lb ft2': 'lb·ft²', 'lb·ft2': 'lb·ft²' },
    minimum: 0,
  },
  'expansion coefficient': { units: { '1/K': 1, '%/K': 0.01 }, spellings: {} },
  'molar volume': {
    units: { 'm³/mol': 1, 'cm³/mol': 1e-6 },
    spellings: { 'm3/mol': 'm³/mol', 'cm3/mol': 'cm³/mol' },
  },
  'psychrometer coefficient': {
    units: { '1/K': 1 },
    spellings: { '1/°C': '1/K' },
  },
  // Money of one currency, which the label names: there is no rate to convert with.
  cost: { units: { '1': 1 }, spellings: {} },
  'cost per mass': {
    units: { '1/kg': 1, '1/g': 1000, '1/lb': 2.2046226218487757 },
    spellings: {},
    minimum: 0,
  },
  'mass flux': { units: { 'kg/(m²·s)': 1 }, spellings: { 'kg/(m2 s)': 'kg/(m²·s)' } },
  'dynamic viscosity': {
    units: { 'Pa·s': 1, 'mPa·s': 0.001, 'µPa·s': 1e-6 },
    spellings: { 'Pa s': 'Pa·s', 'mPa s': 'mPa·s', cP: 'mPa·s', 'uPa·s': 'µPa·s', 'μPa·s': 'µPa·s' },
    minimum: 0,
  },
  'thermal conductivity': {
    units: { 'W/(m·K)': 1, 'Btu/(h·ft·°F)': 1.7307346663713912 },
    spellings: { 'W/(m K)': 'W/(m·K)', 'W/mK': 'W/(m·K)', 'Btu/(hr·ft·°F)': 'Btu/(h·ft·°F)' },
    minimum: 0,
  },
  'heat transfer coefficient': {
    units: { 'W/(m²·K)': 1, 'Btu/(h·ft²·°F)': 5.678263341113488 },
    spellings: { 'W/(m2 K)': 'W/(m²·K)', 'W/m2K': 'W/(m²·K)', 'Btu/(hr·ft²·°F)': 'Btu/(h·ft²·°F)' },
    minimum: 0,
  },
  'thermal resistance': { units: { 'K/W': 1 }, spellings: {}, minimum: 0 },
  'thermal insulance': {
    units: { 'm²·K/W': 1, 'h·ft²·°F/Btu': 0.17611018368230585 },
    spellings: { 'm2 K/W': 'm²·K/W', 'm²K/W': 'm²·K/W', 'hr·ft²·°F/Btu': 'h·ft²·°F/Btu' },
    minimum: 0,
  },
} as const satisfies Record<string, KindDefinition>;

type UnitSize = number | readonly [size: number, offset: number];

interface KindDefinition {
  readonly units: Readonly<Record<string, UnitSize>>;
  /** Spellings people type, and the unit each means. */
  readonly spellings: Readonly<Record<string, string>>;
  /** Spellings that could mean more than one thing, and what to write instead. */
  readonly ambiguous?: Readonly<Record<string, string>>;
  /** Kinds of one dimension share units, so a number in the wrong one of them is likely a slip of kind. Its own where left out. */
  readonly dimension?: string;
  /** For kinds that are points on a scale: the kind of the distance between two of them. */
  readonly difference?: string;
  /** Smallest possible SI value. */
  readonly minimum?: number;
}

/** The name of a kind of quantity, such as `'gauge pressure'`. */
export type Kind = keyof typeof KINDS;

/** The spellings of unit that a kind takes. */
export type UnitOf<K extends Kind> = K extends Kind
  ? (keyof (typeof KINDS)[K]['units'] | keyof (typeof KINDS)[K]['spellings']) & string
  : never;

/** A type parameter used a second time without being inferred from there; written by hand for old compilers. */
export type Same<K> = [K][K extends unknown ? 0 : never];

/** The kind of the difference between two quantities of a kind. */
export type DifferenceOf<K extends Kind> = K extends Kind
  ? (typeof KINDS)[K] extends { readonly difference: infer D extends Kind }
    ? D
    : K
  : never;

/** A kind's definition, with the optional fields readable for every kind. */
export function kindOf(kind: Kind): KindDefinition {
  return KINDS[kind];
}

/** What a kind shares with others of its dimension. */
export function dimensionOf(kind: Kind): string {
  return kindOf(kind).dimension ?? kind;
}

/** Whether a value from outside is the name of a kind; `constructor` and its like are not. */
export function isKind(value: unknown): value is Kind {
  return typeof value === 'string' && Object.hasOwn(KINDS, value);
}

/** The kind of the difference between two quantities of a kind: a temperature difference for temperatures, else the kind itself. */
export function differenceKind(kind: Kind): Kind {
  return (kindOf(kind).difference ?? kind) as Kind;
}

/** The kind with its article, for sentences: `an absolute pressure`. */
export function withArticle(kind: string): string {
  return `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}`;
}

/** The name of the function that makes a quantity of a kind: `absolutePressure`. */
export function constructorName(kind: Kind): string {
  return kind.replace(/[ -](\w)/g, (_, letter: string) => letter.toUpperCase());
}
