// Each line that follows a `//!` comment must not compile; the words after it must be in the first line of the error.
import {
  absolute,
  absolutePressure,
  add,
  column,
  compareValues,
  gaugePressure,
  power,
  ratio,
  ratioOf,
  scale,
  seaLevelPressure,
  subtract,
  temperature,
  temperatureDifference,
  torque,
  type Quantity,
} from '../../src/units/index.js';
import { assumed, calculation, commonPractice, input, output } from '../../src/calculation/index.js';

const outletTemperature = calculation({
  name: 'outlet temperature',
  task: 'compress the charge',
  inputs: {
    /** Inlet temperature. */
    inletTemperature: input('T1', 'temperature', { min: 150, max: 500 }),
    /** Outlet over inlet pressure. */
    pressureRatio: input('PR', 'ratio', { min: 1, max: 8 }),
    /** Heat-capacity ratio. */
    heatCapacityRatio: assumed('k', 'ratio', { min: 1.2, max: 1.67, assume: ratio(1.4) }),
  },
  output: output('T2', 'temperature', '°C'),
  formula: 'T1 * PR^((k - 1) / k)',
  si: (T1, PR, k) => T1 * PR ** ((k - 1) / k),
  sources: [commonPractice('')],
});
const room = temperature(18, '°C');

//! '"bananas"' '"psi"'
gaugePressure(3, 'bananas');
//! 'number' 'Quantity<"temperature">'
outletTemperature({ inletTemperature: 18, pressureRatio: ratio(2) });
//! 'Quantity<"temperature difference">' 'Quantity<"temperature">'
outletTemperature({ inletTemperature: temperatureDifference(18, '°C'), pressureRatio: ratio(2) });
//! 'Quantity<"absolute pressure">' 'Quantity<"ratio">'
outletTemperature({ inletTemperature: room, pressureRatio: absolutePressure(2, 'bar') });
//! 'pressureRatio'
outletTemperature({ inletTemperature: room });
//! 'heatCapcityRatio'
outletTemperature({ inletTemperature: room, pressureRatio: ratio(2), heatCapcityRatio: ratio(1.3) });
//! 'Quantity<"sea-level pressure">' 'Quantity<"absolute pressure">'
absolute(gaugePressure(1, 'bar'), seaLevelPressure(1016, 'hPa'));
//! 'Quantity<"absolute pressure">' 'Quantity<"gauge pressure">'
absolute(absolutePressure(1, 'bar'), absolutePressure(1, 'bar'));
//! 'Quantity<"power">' 'Quantity<"torque">'
ratioOf(torque(1, 'N·m'), power(1, 'W'));
//! 'Quantity<"power">' 'Quantity<"torque">'
compareValues(torque(1, 'N·m'), power(1, 'W'));
//! 'Quantity<"temperature">' 'Quantity<"temperature difference">'
const difference: Quantity<'temperature difference'> = room;
//! 'Quantity<"temperature difference">' 'Quantity<"temperature">'
const point: Quantity<'temperature'> = subtract(room, room);
//! 'string' 'number | Quantity<"ratio">'
scale(torque(1, 'N·m'), '2');
//! '"psi"'
room.in('psi');
//! '"N·m"'
column('temperature', [1, 2], 'N·m');

void [difference, point, add];
