/** A temperature sensor in the manifold, in SI numbers. */
export interface SensorModel {
  readonly timeConstant: number;
  /** Mass flow at which that time constant holds; it falls with the root of the flow. Undefined: the same at any flow. */
  readonly atFlow: number | undefined;
  /** Share of the way from the charge to the wall at which the sensor settles. */
  readonly wallShare: number;
  readonly wallTemperature: number;
  readonly startTemperature: number | undefined;
}

/** What a sensor reads after a time in charge of one temperature. */
export function sensorAfter(sensor: SensorModel, reading: number, charge: number, flow: number, time: number): number {
  const settled = charge + sensor.wallShare * (sensor.wallTemperature - charge);
  const constant =
    sensor.atFlow === undefined ? sensor.timeConstant : sensor.timeConstant * Math.sqrt(sensor.atFlow / flow);
  return settled + (reading - settled) * Math.exp(-time / constant);
}
