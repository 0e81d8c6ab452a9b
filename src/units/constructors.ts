import { kindOf, type Kind, type UnitOf } from './kinds.js';
import type { Quantity } from './origin.js';
import { quantity } from './quantity.js';

type Constructor<K extends Kind> = (value: number, unit: UnitOf<K>) => Quantity<K>;
type PlainConstructor<K extends Kind> = (value: number, unit?: UnitOf<K>) => Quantity<K>;

/* @__NO_SIDE_EFFECTS__ */
function of<K extends Kind>(kind: K): Constructor<K> {
  return (value, unit) => quantity(kind, value, unit);
}

/* @__NO_SIDE_EFFECTS__ */
function plain<K extends Kind>(kind: K): PlainConstructor<K> {
  return (value, unit) => quantity(kind, value, unit ?? (Object.keys(kindOf(kind).units)[0] as UnitOf<K>));
}

/** A temperature: a point on the scale, not a difference. */
export const temperature: Constructor<'temperature'> = /* @__PURE__ */ of('temperature');

/** A difference of two temperatures; converts without the offset. */
export const temperatureDifference: Constructor<'temperature difference'> =
  /* @__PURE__ */ of('temperature difference');

/** A pressure above vacuum. A barometer at the place, and `MAP`, are absolute. */
export const absolutePressure: Constructor<'absolute pressure'> = /* @__PURE__ */ of('absolute pressure');

/** A pressure above the surrounding air. Boost is a gauge pressure. */
export const gaugePressure: Constructor<'gauge pressure'> = /* @__PURE__ */ of('gauge pressure');

/** A difference of two pressures, such as the loss of a core. */
export const pressureDifference: Constructor<'pressure difference'> = /* @__PURE__ */ of('pressure difference');

/** A barometer reduced to sea level, as weather services and airports give it. It is not the pressure at the place: use `stationPressure`. */
export const seaLevelPressure: Constructor<'sea-level pressure'> = /* @__PURE__ */ of('sea-level pressure');

/** Work per cycle over swept volume. */
export const meanEffectivePressure: Constructor<'mean effective pressure'> =
  /* @__PURE__ */ of('mean effective pressure');

/** A plain ratio: efficiency, effectiveness, volumetric efficiency, pressure ratio. */
export const ratio: PlainConstructor<'ratio'> = /* @__PURE__ */ plain('ratio');

/** Vapour pressure over saturation pressure at the same temperature. The unit must be written: 45 is `'%'`, 0.45 is `'1'`. */
export const relativeHumidity: Constructor<'relative humidity'> = /* @__PURE__ */ of('relative humidity');

/** Mass of water vapour per mass of dry air. */
export const humidityRatio: Constructor<'humidity ratio'> = /* @__PURE__ */ of('humidity ratio');

/** Amount of one gas per amount of all. */
export const moleFraction: PlainConstructor<'mole fraction'> = /* @__PURE__ */ plain('mole fraction');

/** Mass of one part per mass of all. */
export const massFraction: PlainConstructor<'mass fraction'> = /* @__PURE__ */ plain('mass fraction');

/** Volume of one part per volume of all before mixing: what a fuel pump's E10 says. */
export const volumeFraction: PlainConstructor<'volume fraction'> = /* @__PURE__ */ plain('volume fraction');

/** Mass of dry air per mass of fuel. */
export const airFuelRatio: PlainConstructor<'air-fuel ratio'> = /* @__PURE__ */ plain('air-fuel ratio');

/** Air-fuel ratio over the stoichiometric one. */
export const lambda: PlainConstructor<'lambda'> = /* @__PURE__ */ plain('lambda');

/** One over lambda. */
export const equivalenceRatio: PlainConstructor<'equivalence ratio'> = /* @__PURE__ */ plain('equivalence ratio');

/** An octane number (RON, MON or octane index). */
export const octaneNumber: PlainConstructor<'octane number'> = /* @__PURE__ */ plain('octane number');

/** Mass per volume. */
export const density: Constructor<'density'> = /* @__PURE__ */ of('density');

/** A mass. */
export const mass: Constructor<'mass'> = /* @__PURE__ */ of('mass');

/** Mass per time. */
export const massFlow: Constructor<'mass flow'> = /* @__PURE__ */ of('mass flow');

/** A volume; swept volume is one. */
export const volume: Constructor<'volume'> = /* @__PURE__ */ of('volume');

/** Volume per time at the actual state. */
export const volumeFlow: Constructor<'volume flow'> = /* @__PURE__ */ of('volume flow');

/** A mass flow of dry air written as the volume it would have at a reference state, which the unit names. */
export const standardVolumeFlow: Constructor<'standard volume flow'> = /* @__PURE__ */ of('standard volume flow');

/** A length. */
export const length: Constructor<'length'> = /* @__PURE__ */ of('length');

/** An area. */
export const area: Constructor<'area'> = /* @__PURE__ */ of('area');

/** A duration. */
export const time: Constructor<'time'> = /* @__PURE__ */ of('time');

/** A plane angle. */
export const angle: Constructor<'angle'> = /* @__PURE__ */ of('angle');

/** Revolutions per time; engine speed. */
export const rotationalSpeed: Constructor<'rotational speed'> = /* @__PURE__ */ of('rotational speed');

/** Change of rotational speed per time; the ramp rate of a pull. */
export const rotationalAcceleration: Constructor<'rotational acceleration'> =
  /* @__PURE__ */ of('rotational acceleration');

/** Distance per time. */
export const speed: Constructor<'speed'> = /* @__PURE__ */ of('speed');

/** A torque; not an energy. */
export const torque: Constructor<'torque'> = /* @__PURE__ */ of('torque');

/** A force. */
export const force: Constructor<'force'> = /* @__PURE__ */ of('force');

/** Energy per time. `hp` is the mechanical horsepower of 550 ft·lbf/s, `PS` the metric one. */
export const power: Constructor<'power'> = /* @__PURE__ */ of('power');

/** Heat or work. `Btu` is the International Table one. */
export const energy: Constructor<'energy'> = /* @__PURE__ */ of('energy');

/** Energy per mass: enthalpy, heating value, latent heat. */
export const specificEnergy: Constructor<'specific energy'> = /* @__PURE__ */ of('specific energy');

/** Heat per mass and kelvin. */
export const specificHeatCapacity: Constructor<'specific heat capacity'> = /* @__PURE__ */ of('specific heat capacity');

/** The gas constant of one gas, per mass. */
export const specificGasConstant: Constructor<'specific gas constant'> = /* @__PURE__ */ of('specific gas constant');

/** Heat per kelvin of a body. */
export const heatCapacity: Constructor<'heat capacity'> = /* @__PURE__ */ of('heat capacity');

/** Mass flow times specific heat capacity. */
export const heatCapacityRate: Constructor<'heat capacity rate'> = /* @__PURE__ */ of('heat capacity rate');

/** Heat flow per kelvin: the UA of a heat exchanger. */
export const thermalConductance: Constructor<'thermal conductance'> = /* @__PURE__ */ of('thermal conductance');

/** Fuel mass per work done. */
export const specificFuelConsumption: Constructor<'specific fuel consumption'> =
  /* @__PURE__ */ of('specific fuel consumption');

/** Mass per amount of substance. */
export const molarMass: Constructor<'molar mass'> = /* @__PURE__ */ of('molar mass');

/** Resistance of a turning part to a change of its speed. */
export const momentOfInertia: Constructor<'moment of inertia'> = /* @__PURE__ */ of('moment of inertia');

/** Relative change of volume per kelvin. */
export const expansionCoefficient: Constructor<'expansion coefficient'> = /* @__PURE__ */ of('expansion coefficient');

/** Volume per amount of substance: a second virial coefficient is one, and mostly negative. */
export const molarVolume: Constructor<'molar volume'> = /* @__PURE__ */ of('molar volume');

/** How fast a wet bulb's vapour pressure falls behind per kelvin of its depression and per total pressure. */
export const psychrometerCoefficient: Constructor<'psychrometer coefficient'> =
  /* @__PURE__ */ of('psychrometer coefficient');

/** Mass flow per area. */
export const massFlux: Constructor<'mass flux'> = /* @__PURE__ */ of('mass flux');

/** Dynamic viscosity of a fluid. */
export const dynamicViscosity: Constructor<'dynamic viscosity'> = /* @__PURE__ */ of('dynamic viscosity');

/** Heat conductivity of a material or fluid. */
export const thermalConductivity: Constructor<'thermal conductivity'> = /* @__PURE__ */ of('thermal conductivity');

/** Heat flow per area and kelvin between a wall and a flow. */
export const heatTransferCoefficient: Constructor<'heat transfer coefficient'> =
  /* @__PURE__ */ of('heat transfer coefficient');

/** Kelvin per heat flow of a wall or layer: one over a conductance. */
export const thermalResistance: Constructor<'thermal resistance'> = /* @__PURE__ */ of('thermal resistance');

/** Area times kelvin per heat flow of a layer: a fouling factor is one. */
export const thermalInsulance: Constructor<'thermal insulance'> = /* @__PURE__ */ of('thermal insulance');

/** Money, in whatever currency its label names; there is no conversion. */
export const cost: PlainConstructor<'cost'> = /* @__PURE__ */ plain('cost');

/** Money per mass: the price of a coolant by weight. */
export const costPerMass: Constructor<'cost per mass'> = /* @__PURE__ */ of('cost per mass');

/** A ratio in percent: `percent(72)` is `ratio(0.72)`, shown as 72 %. */
export const percent = (value: number): Quantity<'ratio'> => quantity('ratio', value, '%');
