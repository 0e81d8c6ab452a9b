import { describe, it } from 'vitest';
import {
  airSideEffectiveness,
  chargeTemperatureFromWall,
  effectiveness,
  steadyWallTemperature,
} from '../../src/intercooler/index.js';
import { heatCapacityRate, ratio, temperature } from '../../src/units/index.js';
import { expectPrinted } from '../statistics/printed.js';

describe('a wall of one temperature, settled', () => {
  // Charge 202 W/K with 2 transfer units, cooling air 500 W/K with 1; closed forms and Mason's series, mpmath, 50 digits.
  it('reaches 0.5569 where crossflow of the same conductance reaches 0.5927', () => {
    const hotInlet = temperature(150, '°C');
    const coolantInlet = temperature(30, '°C');
    const chargeTransferUnits = ratio(2);
    const wallTemperature = steadyWallTemperature({
      hotInlet,
      coolantInlet,
      chargeTransferUnits,
      coolantTransferUnits: ratio(1),
      chargeCapacityRate: heatCapacityRate(202, 'W/K'),
      coolantCapacityRate: heatCapacityRate(500, 'W/K'),
    });
    const hotOutlet = chargeTemperatureFromWall({ hotInlet, wallTemperature, chargeTransferUnits });
    expectPrinted(airSideEffectiveness({ hotInlet, hotOutlet, coolantInlet }).si, '0.5569');
    const conductance = 1 / (1 / (202 * 2) + 1 / (500 * 1));
    expectPrinted(effectiveness.crossflowUnmixed.kernel(conductance / 202, 202 / 500), '0.5927');
  });
});
