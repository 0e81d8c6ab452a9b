import type { CoreGeometry, FlowsThroughCore } from '../../src/intercooler/index.js';
import {
  absolutePressure,
  angle,
  length,
  massFlow,
  ratio,
  temperature,
  thermalConductivity,
} from '../../src/units/index.js';

/** A bar-and-plate charge side with a louvred cooling-air side, 500 by 320 by 76 mm. */
export const benchCore: CoreGeometry = {
  name: 'the bench core',
  arrangement: 'crossflowUnmixed',
  charge: {
    passages: ratio(20),
    flowLength: length(500, 'mm'),
    fins: {
      type: 'offset strip',
      pitch: length(2.5, 'mm'),
      plateSpacing: length(6.5, 'mm'),
      thickness: length(0.15, 'mm'),
      stripLength: length(6, 'mm'),
    },
  },
  coolant: {
    passages: ratio(21),
    flowLength: length(76, 'mm'),
    fins: {
      type: 'louvred',
      pitch: length(1.8, 'mm'),
      plateSpacing: length(8, 'mm'),
      thickness: length(0.1, 'mm'),
      louvrePitch: length(1.4, 'mm'),
      louvreLength: length(6.8, 'mm'),
      louvreAngle: angle(25, '°'),
    },
  },
  plateThickness: length(0.5, 'mm'),
  metalConductivity: thermalConductivity(180, 'W/(m·K)'),
};

/** The flows of the hill-climb special at full power with the fan on. */
export const benchFlows: FlowsThroughCore = {
  charge: {
    massFlow: massFlow(165, 'g/s'),
    inletTemperature: temperature(121, '°C'),
    inletPressure: absolutePressure(204.1, 'kPa'),
  },
  coolant: {
    massFlow: massFlow(0.55, 'kg/s'),
    inletTemperature: temperature(18, '°C'),
    inletPressure: absolutePressure(94.1, 'kPa'),
  },
};
