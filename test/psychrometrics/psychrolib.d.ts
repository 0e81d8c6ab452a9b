/** What the comparison uses of psychrolib, which has no types of its own. Temperatures in °C, pressures in Pa, once set to SI. */
declare module 'psychrolib' {
  const psychrolib: {
    readonly SI: unknown;
    SetUnitSystem(system: unknown): void;
    GetSatVapPres(temperature: number): number;
    GetSatHumRatio(temperature: number, pressure: number): number;
    GetHumRatioFromRelHum(temperature: number, relativeHumidity: number, pressure: number): number;
    GetHumRatioFromTWetBulb(temperature: number, wetBulb: number, pressure: number): number;
    GetTWetBulbFromHumRatio(temperature: number, humidityRatio: number, pressure: number): number;
    GetTDewPointFromVapPres(temperature: number, vapourPressure: number): number;
    GetMoistAirDensity(temperature: number, humidityRatio: number, pressure: number): number;
    GetMoistAirEnthalpy(temperature: number, humidityRatio: number): number;
    GetDegreeOfSaturation(temperature: number, humidityRatio: number, pressure: number): number;
  };
  export default psychrolib;
}
