import { airPerCycle, chargeTemperatureAfterWallHeating } from '../engine/index.js';
import { scale, type Quantity } from '../units/index.js';
import type { Path } from './read-installation.js';

/** The charge in the cylinders when the inlet closes, as far as an air pump knows it. */
export interface CylinderState {
  /** That of the manifold: what fills the cylinder. */
  readonly pressure: Quantity<'absolute pressure'>;
  /** After the walls have warmed it; undefined where the installation does not say how warm they are. */
  readonly temperature: Quantity<'temperature'> | undefined;
  /** Mass of dry air over the swept volume. */
  readonly dryAirDensity: Quantity<'density'>;
  /** Dry air of all cylinders in one cycle. */
  readonly airPerCycle: Quantity<'mass'>;
}

/** What the path knows of the charge at the cylinders. */
export interface ChargeAtCylinders {
  readonly pressure: Quantity<'absolute pressure'>;
  readonly temperature: Quantity<'temperature'>;
  readonly dryAirDensity: Quantity<'density'>;
  readonly volumetricEfficiency: Quantity<'ratio'>;
  readonly airFlow: Quantity<'mass flow'>;
}

/** The charge in the cylinders, from that in the manifold. */
export function cylinderOf(path: Path, charge: ChargeAtCylinders): CylinderState {
  const { walls, speed: engineSpeed, revolutionsPerCycle } = path;
  return {
    pressure: charge.pressure,
    dryAirDensity: scale(charge.dryAirDensity, charge.volumetricEfficiency),
    temperature:
      walls &&
      chargeTemperatureAfterWallHeating({
        manifoldTemperature: charge.temperature,
        wallTemperature: walls.temperature,
        heatedShare: walls.heatedShare,
      }),
    airPerCycle: airPerCycle({ airMassFlow: charge.airFlow, engineSpeed, revolutionsPerCycle }),
  };
}
