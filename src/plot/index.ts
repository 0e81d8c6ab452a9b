/**
 * Pictures of comparisons, scenarios, compressor maps, cores and humid air as Vega-Lite specifications, which are plain data, and as static SVG.
 *
 * @module plot
 */
export { overlayPlot } from './overlay.js';
export { differencePlot } from './difference.js';
export { smallMultiples } from './small-multiples.js';
export { splitPlot } from './split.js';
export { splitBySpeedPlot } from './split-by-speed.js';
export { pullsPlot } from './pulls.js';
export { intervalBar, type IntervalBarOptions } from './interval-bar.js';
export { renderSvg, type RenderOptions } from './render.js';
export type { PlotOptions, PlotSpec, PlotValue } from './spec.js';
export {
  effectivenessChart,
  type ChartedArrangement,
  type ChartedCore,
  type EffectivenessChartOptions,
} from './effectiveness-chart.js';
export { psychrometricChart, type ChartState, type PsychrometricChart } from './psychrometric-chart.js';
export { stationPlot, type NamedPoint, type StationPlotOptions, type StationProperty } from './stations.js';
export { scenarioBars, type ScenarioBar, type ScenarioBarsOptions } from './scenario-bars.js';
export { pullInTimePlot, type NamedPull, type PullInTimePlotOptions, type PullProperty } from './pull-in-time.js';
export {
  compressorMapPlot,
  type CompressorMapPlotOptions,
  type OperatingLine,
  type PointOnMap,
} from './compressor-map.js';
