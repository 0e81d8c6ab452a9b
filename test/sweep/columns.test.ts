import { describe, expect, it } from 'vitest';
import { channel, readLog, type ChannelRole, type Pull } from 'coldside/sweep';

/** A log with one column of interest beside engine speed. */
function reading(header: string, value = '1', extra = ''): Pull {
  return readLog(`Revs (rpm)\t${header}${extra}\n2500\t${value}${extra === '' ? '' : '\t1'}\n`)[0]!;
}

const roleOf = (header: string): ChannelRole | undefined =>
  (Object.keys(reading(header).channels) as ChannelRole[]).find((role) => role !== 'engineSpeed');

describe('a header', () => {
  // How loggers write is common practice, no source.
  it.each([
    ['Time (s)', 'time'],
    ['t [ms]', 'time'],
    ['Elapsed time, s', 'time'],
    ['Clock (s)', 'clock'],
    ['Time of day (s)', 'clock'],
    ['TORQUE (LB-FT)', 'torque'],
    ['Torque lb-ft', 'torque'],
    ['Hub torque [kgf m]', 'torque'],
    ['torque_Nm', 'torque'],
    ['Tq (ft-lb)', 'torque'],
    ['Power (kW)', 'power'],
    ['hp', 'power'],
    ['WHP', 'power'],
    ['kW', 'power'],
    ['Boost (psi)', 'boost'],
    ['boost pressure [bar]', 'boost'],
    ['Boost (psig)', 'boost'],
    ['MAP (psig)', 'boost'],
    ['manifold gauge pressure (kPa)', 'boost'],
    ['MAP (kPa)', 'manifoldPressure'],
    ['Manifold absolute pressure (mbar)', 'manifoldPressure'],
    ['manifold_pressure_kPa_abs', 'manifoldPressure'],
    ['Boost (bar abs)', 'manifoldPressure'],
    ['Boost (psia)', 'manifoldPressure'],
    ['absolute boost pressure [kPa]', 'manifoldPressure'],
    ['IAT (F)', 'chargeTemperature'],
    ['Temp charge (degC)', 'chargeTemperature'],
    ['ChargeTemp (°C)', 'chargeTemperature'],
    ['intake_air_temp_C', 'chargeTemperature'],
    ['Intercooler outlet temp (C)', 'chargeTemperature'],
    ['Post-intercooler temp (C)', 'chargeTemperature'],
    ['Compressor outlet temp (F)', 'compressorOutletTemperature'],
    ['Pre-intercooler temp (C)', 'compressorOutletTemperature'],
    ['Temperature before core (C)', 'compressorOutletTemperature'],
    ['Intake manifold temp (°C)', 'chargeTemperature'],
    ['Compressor outlet pressure (kPa)', 'compressorOutletPressure'],
    ['Pre-intercooler pressure (psi)', 'compressorOutletPressure'],
    ['Core face temp (F)', 'faceTemperature'],
    ['Compressor inlet temperature (K)', 'intakeTemperature'],
    ['Pre-turbo temp (C)', 'intakeTemperature'],
    ['Room temp (F)', 'roomTemperature'],
    ['ambient_temp_C', 'roomTemperature'],
    ['Barometer (inHg)', 'barometer'],
    ['Baro [hPa]', 'barometer'],
    ['Atmospheric pressure (kPa)', 'barometer'],
    ['Humidity (%)', 'relativeHumidity'],
    ['RH %', 'relativeHumidity'],
    ['rel. humidity (%RH)', 'relativeHumidity'],
    ['Lambda', 'lambda'],
    ['Lambda 1 [-]', 'lambda'],
    ['λ', 'lambda'],
    ['AFR', 'airFuelRatio'],
    ['Air/fuel ratio', 'airFuelRatio'],
    ['Air mass flow (lb/min)', 'airFlow'],
    ['MAF g/s', 'airFlow'],
    ['air_mass_flow_g_s', 'airFlow'],
    ['Airflow (kg/h)', 'airFlow'],
    ['Fuel flow (kg/h)', 'fuelFlow'],
    ['fuel_g_s', 'fuelFlow'],
    ['Fuel flow (L/h)', 'fuelVolumeFlow'],
    ['Oil temp (F)', 'oilTemperature'],
    ['Coolant temp (C)', 'coolantTemperature'],
    ['Water temp (C)', 'coolantTemperature'],
    ['Fuel rail pressure (bar)', 'fuelPressure'],
    ['Ignition advance (°)', 'sparkAdvance'],
    ['Ign adv [deg]', 'sparkAdvance'],
    ['Ign timing (deg BTDC)', 'sparkAdvance'],
    ['Ignition timing (DEG BTDC)', 'sparkAdvance'],
    ['Spark advance (°BTDC)', 'sparkAdvance'],
    ['spark_advance_deg', 'sparkAdvance'],
    ['Spark angle (rad)', 'sparkAdvance'],
    ['Zündwinkel (°CA)', 'sparkAdvance'],
    ['ZZP [deg CA]', 'sparkAdvance'],
    ['vehicle_speed_km_h', 'vehicleSpeed'],
    ['Speed (mph)', 'vehicleSpeed'],
  ])('"%s" is read as %s', (header, role) => {
    expect(roleOf(header)).toBe(role);
  });

  it.each([
    'Engine speed (rpm)',
    'RPM',
    'rpm',
    'Engine RPM',
    'RPM [1/min]',
    'engine_speed_rpm',
    'Speed (rpm)',
    'n (1/min)',
    'EngineSpeed (1/min)',
  ])('"%s" is read as engine speed', (header) => {
    const pull = readLog(`${header};Lambda\n2500;1\n`)[0]!;
    expect(pull.channels.engineSpeed!.in('rpm')[0]).toBeCloseTo(2500, 9);
  });

  it.each([
    'Target boost (psi)',
    'Boost duty (%)',
    'ECU torque (Nm)',
    'Requested torque (Nm)',
    'Lambda correction (%)',
    'Exhaust temp (C)',
    'Exhaust manifold pressure (kPa)',
    'Gearbox oil temp (C)',
    'Intercooler water temp (C)',
    'Torque (%)',
    'Absolute humidity (g/kg)',
    'Temp (C)',
    'Speed',
    'pedal_pct',
    'start_s_in_trip',
    '__proto__',
    'constructor',
    'toString',
  ])('"%s" is not taken for anything, and said to be unused', (header) => {
    const pull = reading(header);
    expect(Object.keys(pull.channels)).toEqual(['engineSpeed']);
    expect(pull.unused).toMatchObject([{ header, column: 2 }]);
    expect(pull.unused[0]!.why).not.toBe('');
    expect(({} as Record<string, unknown>)['header']).toBeUndefined();
  });

  it('says in which unit the numbers were read, and where that stood', () => {
    expect(reading('Boost (psi)').sources.boost).toMatchObject({ unit: 'psi', unitFrom: 'header', how: 'guess' });
    expect(reading('hp').sources.power).toMatchObject({ unit: 'hp', unitFrom: 'name' });
    expect(reading('Lambda').sources.lambda).toMatchObject({ unit: '1', unitFrom: 'none' });
    const row = readLog('RPM,Boost\nrpm,kPa\n2500,39\n')[0]!;
    expect(row.sources.boost).toMatchObject({ unit: 'kPa', unitFrom: 'units row' });
    expect(row.dialect.hasUnitsRow).toBe(true);
  });

  it('whose unit the row below contradicts is an error that names both', () => {
    expect(() => readLog('RPM,Torque (lb-ft)\nrpm,Nm\n2500,150\n')).toThrow(
      /"Torque \(lb-ft\)" says lb-ft in its header and Nm in the row of units/,
    );
    expect(readLog('RPM,Torque (Nm)\nrpm,N m\n2500,150\n')[0]!.channels.torque!.si[0]).toBe(150);
  });
});

describe('several columns for one channel', () => {
  it('leave the surer one in use, and say so', () => {
    const pull = readLog('RPM,IAT (C),Charge temp (C)\n2500,20,30\n')[0]!;
    expect(pull.channels.chargeTemperature!.in('°C')[0]).toBeCloseTo(30, 9);
    expect(pull.unused).toEqual([
      { header: 'IAT (C)', column: 2, why: 'charge temperature is taken from "Charge temp (C)"' },
    ]);
    expect(pull.questions).toEqual([]);
  });

  it('that are equally likely are asked about', () => {
    const pull = readLog('RPM,Lambda 1,Lambda 2\n2500,0.82,0.84\n')[0]!;
    expect(pull.channels.lambda!.si[0]).toBe(0.82);
    expect(pull.questions).toMatchObject([
      {
        code: 'several columns',
        role: 'lambda',
        message: 'lambda is taken from "Lambda 1" (column 2), but could be "Lambda 2" (column 3).',
      },
    ]);
  });

  it('of one name are told, used or not, and can be chosen by number', () => {
    const text = 'RPM,Torque (Nm),Torque (Nm),x,x\n2500,150,170,1,2\n';
    expect(readLog(text)[0]!.questions.map(({ code }) => code)).toEqual([
      'several columns',
      'named alike',
      'named alike',
    ]);
    expect(readLog(text, { channels: { torque: channel(3) } })[0]!.channels.torque!.si[0]).toBe(170);
  });
});

describe('the channel map', () => {
  it('goes before every guess, and frees the column from other guesses', () => {
    const text = 'RPM,IAT (C),Boost\n2500,20,109\n';
    const pull = readLog(text, {
      channels: { intakeTemperature: channel('IAT'), boost: channel('Boost', 'gauge pressure', 'kPa') },
    })[0]!;
    expect(pull.channels.intakeTemperature!.in('°C')[0]).toBeCloseTo(20, 9);
    expect(pull.channels.chargeTemperature).toBeUndefined();
    expect(pull.channels.boost!.in('kPa')[0]).toBeCloseTo(109, 9);
    expect(pull.sources.boost).toMatchObject({ how: 'map', unitFrom: 'map', unit: 'kPa' });
    expect(String(pull)).toContain('boost "Boost" as gauge pressure in kPa as told');
  });

  it('finds a header with or without its unit, in any case', () => {
    for (const name of ['Boost (psi)', 'Boost', 'boost', 'BOOST (PSI)', 'boost  (psi)']) {
      expect(readLog('RPM,Boost (psi)\n2500,5\n', { channels: { boost: channel(name) } })[0]!.sources.boost!.unit).toBe(
        'psi',
      );
    }
  });

  it('can leave a channel empty', () => {
    const pull = readLog('RPM,Torque (Nm)\n2500,150\n', { channels: { torque: false } })[0]!;
    expect(pull.channels.torque).toBeUndefined();
    expect(pull.unused[0]!.why).toBe('torque is settled by the channel map');
  });

  it('may say what a qualifier in brackets is not: a unit', () => {
    const text = 'RPM,Torque (hub)\n2500,150\n';
    expect(() => readLog(text)).toThrow(/"hub" is not a unit of torque/);
    expect(
      readLog(text, { channels: { torque: channel('Torque (hub)', 'torque', 'N·m') } })[0]!.channels.torque!.si[0],
    ).toBe(150);
  });

  it('may repeat the unit of the header in another spelling', () => {
    const text = 'RPM,Barometer (mbar)\n2500,940\n';
    const pull = readLog(text, { channels: { barometer: channel('Barometer', 'absolute pressure', 'hPa') } })[0]!;
    expect(pull.channels.barometer!.in('kPa')[0]).toBeCloseTo(94, 9);
  });
});
