/**
 * One pull of the invented engine, from room air to the hubs: the physics behind the demo logs.
 *
 * Ambient, inlet loss, compressor, cross-flow core with heat stored in its metal, manifold, speed density, fuel, torque.
 * Left out: exhaust back pressure, spark (its map follows engine speed only), inertia (the dynamometer is taken to correct for it).
 */
import type { Channel, SetUp } from './demo-set-ups.js';

export type Reading = Record<Channel, number>;

/** The room at one moment: seconds since midnight, K, Pa, fraction. */
export interface Room {
  clock: number;
  temperature: number;
  barometer: number;
  humidity: number;
}

/** What no two pulls share. All in SI. */
export interface Circumstances {
  springOffset: number;
  lambdaOffset: number;
  oilStart: number;
  coolantStart: number;
  coreAboveFace: number;
  hunting: { amplitude: number; frequency: number; phase: number };
  /** Whatever else makes a repeat differ, as a factor on torque. */
  repeatability: number;
  rampFactor: number;
  fuelPumpFails: boolean;
}

const zeroCelsius = 273.15;

/** A pull without scatter, hunting or faults. */
export const nominalCircumstances: Circumstances = {
  springOffset: 0,
  lambdaOffset: 0,
  oilStart: zeroCelsius + 88,
  coolantStart: zeroCelsius + 84,
  coreAboveFace: 3,
  hunting: { amplitude: 0, frequency: 1.5, phase: 0 },
  repeatability: 1,
  rampFactor: 1,
  fuelPumpFails: false,
};

export const timeStep = 0.01;
const startSpeed = 2500;
const endSpeed = 6700;
const ramp = 380;

const dryAirGasConstant = 287.042;
const airHeatCapacity = 1007;
/** Where the cores and the inlet of demo-set-ups.ts are rated: kg/s and kg/m3. */
const ratedFlow = 0.16;
const ratedCoolingFlow = 0.55;
const ratedInletDensity = 1.12;
const ratedCoreDensity = 1.9;
/** Core outlet to manifold. */
const pipeLoss = 800;
const pipeWarming = 2;
const firstFlow = 0.06;
const roomMixingTime = 2;

const aluminiumHeatCapacity = 897;
const compressorHeatCapacityRatio = 1.395;
const molarMassRatio = 0.621945;

export const displacement = 4 * (Math.PI / 4) * 0.081 ** 2 * 0.0873;
const stroke = 0.0873;
const densityExponent = 0.6;
/** Gauge pressure the wastegate spring holds at the compressor outlet, and Pa more for each per cent of flow it must pass by. */
const wastegate = { spring: 116.5e3, droop: 50 };
const nominalLambda = 0.82;
const stoichiometricRatio = 14.6;
const heatingValue = 43e6;
const railAboveManifold = 300e3;

/** Share of crank torque that reaches the hubs, and a constant drag in N m: a fact of this invented car only. */
const drivetrain = { share: 0.92, drag: 6 };

const smoothStep = (x: number): number => {
  const held = Math.min(1, Math.max(0, x));
  return held * held * (3 - 2 * held);
};

/** Saturation pressure of water in Pa (Magnus form with the WMO constants). */
const saturationPressure = (temperature: number): number => {
  const celsius = temperature - zeroCelsius;
  return 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
};

export const humidityRatio = (room: Room): number => {
  const vapour = room.humidity * saturationPressure(room.temperature);
  return (molarMassRatio * vapour) / (room.barometer - vapour);
};

const volumetricEfficiency = (engineSpeed: number, manifoldTemperature: number): number =>
  (0.95 - 0.05 * ((engineSpeed - 4700) / 2000) ** 2 + 0.01 * Math.sin(engineSpeed / 430)) *
  (manifoldTemperature / 325) ** (1 - densityExponent);

/** Richer or leaner than lambda 0.87 makes less power from the same air. */
const mixtureFactor = (lambda: number): number => 1 - 2.6 * (lambda - 0.87) ** 2;

/** Later spark near peak torque, where the engine is closest to knock: a fixed map, the same for every set-up. */
const indicatedEfficiency = (engineSpeed: number): number =>
  0.375 - 0.015 * (Math.max(0, 6000 - engineSpeed) / 3000) ** 2;

/** Friction mean effective pressure in Pa, thinner oil dragging less. */
const frictionPressure = (engineSpeed: number, oil: number): number => {
  const pistonSpeed = (2 * stroke * engineSpeed) / 60;
  const warm = 0.85e5 + 0.09e5 * pistonSpeed + 0.0009e5 * pistonSpeed ** 2;
  return warm * (1 - 0.005 * (oil - (zeroCelsius + 90)));
};

const compressorEfficiency = (dryFlow: number): number => 0.715 - 6 * (dryFlow - 0.14) ** 2;

const cells = 4;

/**
 * A cross-flow core, both streams unmixed, cut into cells by cells pieces of wall that store heat.
 * A single wall temperature would not end at the steady cross-flow effectiveness.
 */
export class Core {
  readonly #wall: number[];
  readonly #setUp: SetUp;
  #leavingAir: number;

  constructor(setUp: SetUp, start: number) {
    this.#setUp = setUp;
    this.#wall = Array.from({ length: cells * cells }, () => start);
    this.#leavingAir = start;
  }

  /** Cooling air that has been through the core, part of which comes round again. */
  get leavingAir(): number {
    return this.#leavingAir;
  }

  /** Charge temperature leaving the core; heats the wall if a time is given. */
  pass(charge: number, face: number, flow: number, seconds = 0): number {
    const { core, cooling } = this.#setUp;
    const chargeCapacity = flow * airHeatCapacity;
    const airCapacity = cooling.flow * airHeatCapacity;
    const chargeApproach = Math.exp(-(core.chargeSide * (flow / ratedFlow) ** 0.6) / chargeCapacity / cells);
    const airApproach = Math.exp(-(core.airSide * (cooling.flow / ratedCoolingFlow) ** 0.6) / airCapacity / cells);
    const cellCapacity = (core.metalMass * aluminiumHeatCapacity) / (cells * cells);
    const air = Array.from({ length: cells }, () => face);
    let leavingCharge = 0;
    for (let column = 0; column < cells; column++) {
      let hot = charge;
      for (let row = 0; row < cells; row++) {
        const at = row * cells + column;
        const wall = this.#wall[at]!;
        const cold = air[row]!;
        const hotOut = wall + (hot - wall) * chargeApproach;
        const coldOut = wall + (cold - wall) * airApproach;
        const heat = (chargeCapacity * (hot - hotOut) + airCapacity * (cold - coldOut)) / cells;
        this.#wall[at] = wall + (heat * seconds) / cellCapacity;
        hot = hotOut;
        air[row] = coldOut;
      }
      leavingCharge += hot / cells;
    }
    if (seconds > 0) this.#leavingAir = air.reduce((sum, value) => sum + value, 0) / cells;
    return leavingCharge;
  }
}

/** The true course of one pull, in SI, every hundredth of a second. */
export function pullTruth(setUp: SetUp, room: Room, circumstances: Circumstances): Reading[] {
  const coolingAir = room.temperature + setUp.cooling.warming;
  const core = new Core(setUp, coolingAir + circumstances.coreAboveFace);
  const humidity = humidityRatio(room);
  const inletTemperature = room.temperature + setUp.inlet.warming;
  const readings: Reading[] = [];
  let flow = firstFlow;
  let recirculated = 0;

  for (let step = 0; ; step++) {
    const time = step * timeStep;
    const engineSpeed = startSpeed + ramp * circumstances.rampFactor * time;
    if (engineSpeed > endSpeed) return readings;

    const spooled = 0.3 + 0.7 / (1 + Math.exp(-(engineSpeed - 2700) / 90));
    const { amplitude, frequency, phase } = circumstances.hunting;
    const hunting = amplitude * Math.sin(2 * Math.PI * frequency * time + phase);
    const face = coolingAir + recirculated;

    let pass = { outlet: 0, compressed: 0, charge: 0, manifold: 0, pressure: 0 };
    for (let iteration = 0; iteration < 12; iteration++) {
      const inletDensity = room.barometer / (dryAirGasConstant * inletTemperature);
      const inletPressure =
        room.barometer - (setUp.inlet.pressureLoss * (flow / ratedFlow) ** 2 * ratedInletDensity) / inletDensity;
      const droop = wastegate.droop * 100 * (flow / ratedFlow - 1);
      const outlet = room.barometer + spooled * (wastegate.spring + circumstances.springOffset + hunting + droop);
      const exponent = (compressorHeatCapacityRatio - 1) / compressorHeatCapacityRatio;
      const rise = ((outlet / inletPressure) ** exponent - 1) / compressorEfficiency(flow);
      const compressed = inletTemperature * (1 + rise);
      const charge = core.pass(compressed, face, flow * (1 + humidity));
      const meanDensity = outlet / ((dryAirGasConstant * (compressed + charge)) / 2);
      const pressure =
        outlet - (setUp.core.pressureLoss * (flow / ratedFlow) ** 1.8 * ratedCoreDensity) / meanDensity - pipeLoss;
      const manifold = charge + pipeWarming;
      const dryDensity = (pressure * molarMassRatio) / (molarMassRatio + humidity) / (dryAirGasConstant * manifold);
      flow = (volumetricEfficiency(engineSpeed, manifold) * dryDensity * displacement * engineSpeed) / 120;
      pass = { outlet, compressed, charge, manifold, pressure };
    }
    core.pass(pass.compressed, face, flow * (1 + humidity), timeStep);
    recirculated +=
      ((core.leavingAir - room.temperature) * setUp.cooling.recirculation - recirculated) * (timeStep / roomMixingTime);

    const railLost = circumstances.fuelPumpFails ? 75e3 * smoothStep((engineSpeed - 4500) / 1400) : 0;
    const lambda =
      (nominalLambda + circumstances.lambdaOffset) * Math.sqrt(railAboveManifold / (railAboveManifold - railLost));
    const oil = circumstances.oilStart + 3.5 * (1 - Math.exp(-time / 8));
    const indicatedPower =
      flow * (heatingValue / stoichiometricRatio) * indicatedEfficiency(engineSpeed) * mixtureFactor(lambda);
    const angularSpeed = (engineSpeed * Math.PI) / 30;
    const frictionTorque = (frictionPressure(engineSpeed, oil) * displacement) / (4 * Math.PI);
    const crankTorque = (indicatedPower / angularSpeed - frictionTorque) * circumstances.repeatability;
    const boost = pass.pressure - room.barometer;

    readings.push({
      time,
      clock: room.clock + time,
      engineSpeed,
      torque: drivetrain.share * crankTorque - drivetrain.drag,
      boost,
      manifoldPressure: pass.pressure,
      chargeTemperature: pass.charge,
      compressorOutlet: pass.compressed,
      faceTemperature: face,
      room: room.temperature,
      barometer: room.barometer,
      humidity: room.humidity,
      lambda,
      airFlow: flow * (1 + humidity),
      oil,
      coolant: circumstances.coolantStart + 2.5 * (1 - Math.exp(-time / 6)),
      fuelPressure: railAboveManifold + boost - railLost,
    });
  }
}

/** Mean power at the hubs in W, over a range of engine speed. */
export function meanHubPower(readings: readonly Reading[], from: number, to: number): number {
  const inRange = readings.filter(({ engineSpeed }) => engineSpeed >= from && engineSpeed <= to);
  return (
    inRange.reduce((sum, { torque, engineSpeed }) => sum + (torque * engineSpeed * Math.PI) / 30, 0) / inRange.length
  );
}
