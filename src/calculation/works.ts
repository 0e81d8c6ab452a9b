/**
 * The published works that calculations rest on, each named in one place. Apart from the sources that cite them, so that a page that
 * only calculates does not load the reference list.
 */
const WORKS = {
  ashrae2017: 'ASHRAE Handbook: Fundamentals, SI edition, 2017, chapter 1 (psychrometrics)',
  hylandWexler:
    'R. W. Hyland, A. Wexler, Formulations for the thermodynamic properties of the saturated phases of H2O, ASHRAE Transactions 89 (1983)',
  psychrolib:
    'PsychroLib 2.5 (open source), source and tests, which restate ASHRAE Handbook: Fundamentals 2017, chapter 1',
  cipm2007:
    'A. Picard, R. S. Davis, M. Gläser, K. Fujii, Revised formula for the density of moist air (CIPM-2007), Metrologia 45 (2008) 149',
  wmo8: 'WMO-No. 8, Guide to Instruments and Methods of Observation, volume I, chapter 4 (humidity)',
  siBrochure: 'BIPM, The International System of Units (SI Brochure), 9th edition, 2019',
  iso1217: 'ISO 1217, Displacement compressors: Acceptance tests',
  buck1981:
    'A. L. Buck, New equations for computing vapor pressure and enhancement factor, J. Appl. Meteorol. 20 (1981) 1527',
  nasaTp2002:
    'B. J. McBride, M. J. Zehe, S. Gordon, NASA Glenn coefficients for calculating thermodynamic properties of individual species, NASA/TP-2002-211556 (2002)',
  griMech: 'GRI-Mech 3.0, thermodynamic data file (NASA polynomials with seven coefficients)',
  cantera: 'Cantera (open source), data files airNASA9 and gri30',
  usStandardAtmosphere: 'US Standard Atmosphere, 1976 (NOAA, NASA, US Air Force)',
  white: 'F. M. White, Viscous Fluid Flow, table of Sutherland constants',
  hylandWexlerAir:
    'R. W. Hyland, A. Wexler, Formulations for the thermodynamic properties of dry air from 173.15 K to 473.15 K, and of saturated moist air from 173.15 K to 372.15 K, at pressures to 5 MPa, ASHRAE Transactions 89 (1983) 520',
  greenspan1976:
    'L. Greenspan, Functional equations for the enhancement factors for CO2-free moist air, J. Res. Natl. Bur. Stand. 80A (1976) 41',
  hardy1998:
    'B. Hardy, ITS-90 formulations for vapor pressure, frostpoint temperature, dewpoint temperature, and enhancement factors, Third International Symposium on Humidity and Moisture (1998)',
  buck1996: 'Buck Research Instruments, hygrometer operating manual, appendix with the 1996 revision of Buck 1981',
  amsGlossary: 'American Meteorological Society, Glossary of Meteorology, psychrometric formula',
  iapwsSr1: 'IAPWS SR1-86(1992), Saturation properties of ordinary water substance (W. Wagner, A. Pruss 1993)',
  iapwsIf97: 'IAPWS R7-97(2012), Industrial formulation 1997, region 4 (saturation line)',
  iapwsR14: 'IAPWS R14-08(2011), Pressure along the melting and sublimation curves of ordinary water substance',
  iso2533: 'ISO 2533:1975, Standard atmosphere',
  dixonHall: 'S. L. Dixon, C. A. Hall, Fluid Mechanics and Thermodynamics of Turbomachinery, chapter 1',
  heywood: 'J. B. Heywood, Internal Combustion Engine Fundamentals, 1988',
  kaysLondon: 'W. M. Kays, A. L. London, Compact Heat Exchangers, third edition, 1984',
  incropera: 'F. P. Incropera and others, Fundamentals of Heat and Mass Transfer, chapter 11',
  shahSekulic: 'R. K. Shah, D. P. Sekulic, Fundamentals of Heat Exchanger Design, 2003',
  crc: 'CRC Handbook of Chemistry and Physics',
  spanWagner1996:
    'R. Span, W. Wagner, A new equation of state for carbon dioxide covering the fluid region from the triple-point temperature to 1100 K at pressures up to 800 MPa, J. Phys. Chem. Ref. Data 25 (1996) 1509',
  lemmonSpan2006:
    'E. W. Lemmon, R. Span, Short fundamental equations of state for 20 industrial fluids, J. Chem. Eng. Data 51 (2006) 785',
  coolprop: 'CoolProp (open source), fluid files for carbon dioxide and nitrous oxide',
  encyclopaedia: 'An encyclopaedia page on carbon dioxide',
  niosh: 'NIOSH Pocket Guide to Chemical Hazards',
  mason1955: 'J. L. Mason, Heat transfer in crossflow, Proc. 2nd US National Congress of Applied Mechanics (1955) 801',
  baclic1978:
    'B. S. Baclic, A simplified formula for cross-flow heat exchanger effectiveness, J. Heat Transfer 100 (1978) 746',
  manglikBergles1995:
    'R. M. Manglik, A. E. Bergles, Heat transfer and pressure drop correlations for the rectangular offset strip fin compact heat exchanger, Experimental Thermal and Fluid Science 10 (1995) 171',
  changWang1997:
    'Y.-J. Chang, C.-C. Wang, A generalized heat transfer correlation for louver fin geometry, Int. J. Heat Mass Transfer 40 (1997) 533',
  chang2000:
    'Y.-J. Chang and others, A generalized friction correlation for louver fin geometry, Int. J. Heat Mass Transfer 43 (2000) 2237, amended 49 (2006) 4250',
  tema: 'Standards of the Tubular Exchanger Manufacturers Association (TEMA)',
  caseyFesich2010:
    'M. V. Casey, T. M. Fesich, The efficiency of turbocharger compressors with diabatic flows, J. Eng. Gas Turbines Power 132 (2010) 072302',
  saeJ1349: 'SAE J1349, Engine power test code, revisions JUN1990, AUG2004, SEP2011',
  saeJ1995: 'SAE J1995, Engine power test code: Gross power rating',
  saeJ607: 'SAE J607, Small spark ignition engine test code (withdrawn)',
  saeJ816: 'SAE J816, Engine test code (withdrawn)',
  iso1585: 'ISO 1585, Road vehicles: Engine test code: Net power (with 80/1269/EEC and UN Regulation 85)',
  iso3046: 'ISO 3046-1, Reciprocating internal combustion engines: Performance (with ISO 15550)',
  unR85: 'UN Regulation 85, annex 5 (only paragraph 5.4.2.2, on the engine factor, was seen, as quoted in public)',
  jisD1001: 'JIS D 1001:1993, Road vehicles: Engine power test code (counterpart of ISO 1585 and ISO 2534)',
  grpe2018:
    'UNECE Working Party on Pollution and Energy, GRPE-76-23 (2018), correction to UN Regulation 85: the engine factor is an exponent',
  dieselManual: 'Service manual of a small industrial diesel engine, power correction to ISO 1585',
  din70020: 'DIN 70020, Kraftfahrzeugbau: Leistungen (superseded)',
  saeJ1826: 'SAE J1826, Turbocharger gas stand test code; SAE J922, Turbocharger nomenclature',
  saeJ1832: 'SAE J1832, Low pressure gasoline fuel injector',
  afdc: 'US Department of Energy, Alternative Fuels Data Center, Properties of Fuels (tables)',
  worsley1994:
    'K. J. Worsley, Local maxima and the expected Euler characteristic of excursion sets of chi-squared, F and t fields, Advances in Applied Probability 26 (1994) 13',
  woodLenzen2006:
    'R. Wood, M. Lenzen, Zero-value problems of the logarithmic mean divisia index decomposition method, Energy Policy 34 (2006) 1326',
  astmD5798: 'ASTM D5798, Specification for ethanol fuel blends for flexible-fuel automotive spark-ignition engines',
  brettschneider1979:
    'J. Brettschneider, Berechnung des Luftverhältnisses λ von Luft-Kraftstoff-Gemischen, Bosch Technische Berichte 6 (1979) 177',
  analyserPapers: 'White papers of an exhaust-gas analyser maker on the Brettschneider equation',
  blasius1913: 'H. Blasius, Das Ähnlichkeitsgesetz bei Reibungsvorgängen in Flüssigkeiten, Forschungsheft 131 (1913)',
  chenFlynn1965:
    'S. K. Chen, P. F. Flynn, Development of a single cylinder compression ignition research engine, SAE 650733 (1965)',
  patton1989:
    'K. J. Patton, R. G. Nitschke, J. B. Heywood, Development and evaluation of a friction model for spark-ignition engines, SAE 890836 (1989)',
  douaudEyzat1978:
    'A. M. Douaud, P. Eyzat, Four-octane-number method for predicting the anti-knock behavior of fuels and engines, SAE 780080 (1978)',
  livengoodWu1955:
    'J. C. Livengood, P. C. Wu, Correlation of autoignition phenomena in internal combustion engines and rapid compression machines, 5th Symposium on Combustion (1955) 347',
  kalghatgi2001: 'G. T. Kalghatgi, Fuel anti-knock quality, SAE 2001-01-3584 and 2001-01-3585 (2001)',
  sae2017octane: 'SAE 2017-01-0666, octane index of boosted engines (abstract)',
  moffat1962:
    'R. J. Moffat, Gas temperature measurement, in Temperature: Its Measurement and Control in Science and Industry 3 (1962), part 2, 553',
  fritschCarlson1980:
    'F. N. Fritsch, R. E. Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980) 238',
  fritschButland1984:
    'F. N. Fritsch, J. Butland, A method for constructing local monotone piecewise cubic interpolants, SIAM J. Sci. Stat. Comput. 5 (1984) 300',
  gum: 'JCGM 100:2008, Evaluation of measurement data: Guide to the expression of uncertainty in measurement',
  jcgm101:
    'JCGM 101:2008, Evaluation of measurement data: Supplement 1 to the Guide to the expression of uncertainty in measurement: Propagation of distributions using a Monte Carlo method',
  nistSp811: 'NIST Special Publication 811 (2008), Guide for the use of the International System of Units, appendix B',
} as const;

/** The name of a work in the reference list. */
export type WorkId = keyof typeof WORKS;

/** What stands behind a source that is no published work. */
const OTHERS: Readonly<Record<string, string>> = {
  'common-practice': 'common practice, no source',
  derived: 'derived for this library',
};

/** A source's work as one would cite it. */
export function workOf(id: string): string {
  return (WORKS as Readonly<Record<string, string>>)[id] ?? OTHERS[id] ?? id;
}

/** The works by name, for the reference list. */
export function works(): Readonly<Record<WorkId, string>> {
  return WORKS;
}
