/** The usual cautions of a day of pulls; what bears on an answer stands beside it. */
export const CAUTIONS: readonly string[] = [
  'Dynamometer: nobody beside or in line with rollers, hubs, drive shafts or tyres during a pull; guards and straps as its maker says; the stop within reach of two people.',
  'Exhaust gas: run only with extraction that takes all of it out of the room, and a carbon monoxide alarm where people breathe.',
  'Hot parts: turbocharger, exhaust and charge pipes burn skin and light fuel vapour long after a pull. Let them cool before changing a core.',
  'Pressure: a hot cooling system is under pressure; open it cold. A charge pipe that comes off under boost is thrown: clamp it, and keep faces away.',
  'Cold coolant: carbon dioxide and nitrous oxide freeze skin and eyes, and displace the air to breathe. Gloves, face shield, ventilation and an oxygen alarm; cylinders upright, chained and away from heat.',
  'Fuel: no leak, no spark, no smoking; an extinguisher for liquid fires at hand; fuel lines depressurised before they are opened.',
  'Detonation: it destroys an engine within seconds, sometimes unheard. Nothing on this page says how much spark or boost an engine bears.',
  'Local codes, the makers’ instructions and the judgement of licensed people on the spot come before anything written here.',
];
