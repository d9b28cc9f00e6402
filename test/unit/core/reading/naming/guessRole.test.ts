// Headings as instruments write them, in four languages and in any order of words, against what they mean. The values
// beside them are what such a channel carries; "lambda" alone would not do.

import { describe, expect, it } from 'vitest';
import type { Behaviour } from '../../../../../core/reading/naming/behaviour.ts';
import type { FileHabits } from '../../../../../core/reading/naming/fileHabits.ts';
import { guessRole } from '../../../../../core/reading/naming/guessRole.ts';
import type { RoleGuess } from '../../../../../core/reading/naming/roleGuess.ts';
import { splitNameAndUnit } from '../../../../../core/reading/naming/splitNameAndUnit.ts';

const seen = (min: number, median: number, max: number): Behaviour => ({
  finite: 1000,
  min,
  median,
  max,
  distinct: 90,
});
const HABITS: FileHabits = {
  imperial: false,
  millivolts: false,
  gases: false,
  numbersAreBanks: false,
  trimUnit: null,
};
const VOLTS = seen(0.05, 0.5, 0.9);
const MILLIVOLTS = seen(50, 500, 900);
const LAMBDA = seen(0.85, 1, 1.6);
const TURNS = seen(650, 2000, 3200);
const DEGREES = seen(60, 88, 95);
const TRIM = seen(-6, 1, 8);
const SHARE = seen(10, 20, 60);
const HOT = seen(300, 500, 700);
const STATUS = seen(1, 2, 2);

function guess(heading: string, behaviour: Behaviour): RoleGuess {
  const { name, unit } = splitNameAndUnit(heading);
  const values = unit === 'mV' ? MILLIVOLTS : behaviour;
  return guessRole({ index: 0, name, unit }, values, HABITS);
}

/** Role, bank and sensor, where the heading says them. */
const words = ({ role, bank, sensor }: RoleGuess): string =>
  [role, bank, sensor].filter((part) => part !== null).join(' ');

const HEADINGS: readonly (readonly [Behaviour, string, string])[] = [
  [
    VOLTS,
    'upstreamO2 1 1',
    `O2 Voltage (Bank 1, Sensor 1) [V] | O2S11 | O2S11 (V) | HO2S11 | HO2S 1/1 | B1S1 | B1S1 V | B1-S1 |
     B1 S1 (V) | Bank1Sensor1 | Bank 1 Sensor 1 | Bank 1 - Sensor 1 voltage (V) | O2 B1 S1 | O2_B1S1 |
     O2B1S1 [V] | O2 sensor 1 bank 1 | oxygen sensor bank 1 sensor 1 output voltage | Sonda 1 Banco 1 |
     Sonde 1 Bank 1 | Lambdasonde Bank 1 Sonde 1 (V) | Lambdasonde vor Kat (V) | Vorkatsonde Spannung |
     Spannung Lambdasonde vor Katalysator | sonde amont | Tension sonde amont (V) |
     sonde lambda amont banc 1 | Sonda lambda delantera | Sonda lambda anterior V |
     sensor de oxígeno delantero banco 1 | Sensor O2 B1S1 | front O2 | Front O2 sensor | upstream O2 |
     Upstream HO2S (V) | pre-cat O2 | Pre cat oxygen sensor voltage | O2 pre-cat | O2 before catalyst |
     O2 (1,1) | O2 11 | O2 Sensor 11 | o2_sensor_1_1 | O2 Bank 1 Sensor 1 | O2 Sensor Voltage B1S1 |
     O2_V_B1S1 | o2v11 | O2Volt11 | Regelsonde | Regelsonde Bank 1 | Sauerstoffsensor Bank 1 Sensor 1 |
     Sauerstoffsonde vor Kat | Voltage O2 B1 S1 | B1S1 voltage | S1B1 | Sensor 1 Bank 1 |
     Capteur O2 banc 1 capteur 1 | Sonde à oxygène amont | Oxygen Sensor 1 Bank 1 Voltage(V) | EGO1 B1S1 |
     heated oxygen sensor 1 bank 1 | Bank1_O2_S1_V | B1 O2 front | FrontO2 | O2Front | O2 front (mV) |
     BANK 1 SENSOR 1 (V) | HO2S B1 S1 | O2Sensor1Bank1 | lambda sensor bank 1 sensor 1 voltage |
     Lambda probe upstream voltage | O2S B1S1 | Lambda voltage front | bank 1 upstream o2 sensor`,
  ],
  [
    VOLTS,
    'downstreamO2 1 2',
    `O2 Voltage (Bank 1, Sensor 2) [V] | O2S12 | HO2S12 | B1S2 | B1-S2 | Bank1Sensor2 |
     Bank 1 Sensor 2 voltage | Lambdasonde Bank 1 Sonde 2 (V) | Lambdasonde nach Kat | Nachkatsonde |
     Monitorsonde | Monitorsonde Spannung (mV) | Lambdasonde hinter Katalysator | sonde aval |
     Tension sonde aval | sonde lambda aval | sonda lambda trasera | Sonda lambda posterior |
     Sonda 2 Banco 1 | sensor oxígeno trasero | rear O2 | Rear O2 sensor | downstream O2 | post-cat O2 |
     Post cat oxygen sensor (V) | O2 after catalyst | O2 12 | O2 (1,2) | Sensor 2 Bank 1 | S2B1 |
     o2_sensor_1_2 | Sonde arrière | Sonda después del catalizador | Sonda lambda después catalizador (V) |
     Sonde après catalyseur | Rear HO2S V | O2 sensor 2 | O2 Sensor 2 Voltage | Lambdasonde 2 | Sonde 2 |
     O2S2 | O2 rear | RearO2 | O2_S2 | secondary O2 sensor`,
  ],
  [
    VOLTS,
    'upstreamO2 2 1',
    `B2S1 | Bank 2 Sensor 1 | Sonda 1 Banco 2 | Lambdasonde Bank 2 Sonde 1 | O2S21 | O2 21 |
     sensor 1 of bank 2 | Sonde amont banc 2 | front O2 bank 2 | Upstream O2 B2 | O2 Sensor 5`,
  ],
  [
    VOLTS,
    'downstreamO2 2 2',
    `B2S2 | Bank 2 Sensor 2 | Sonda 2 Banco 2 | O2S22 | rear O2 bank 2 | O2 Sensor 6 | HO2S22`,
  ],
  [VOLTS, 'downstreamO2 1 3', `B1S3 | Bank 1 Sensor 3 | O2S13`],
  [
    TURNS,
    'rpm',
    `Engine RPM [RPM] | ENGINE_RPM () | RPM | rpm | Engine speed | Engine Speed (1/min) | Drehzahl |
     Motordrehzahl (1/min) | Drehzahl (U/min) | régime moteur | Régime moteur (tr/min) | revoluciones |
     Revoluciones del motor (rpm) | Velocidad del motor | régimen motor | Vitesse moteur | EngineRPM |
     engine_speed | Engine Speed RPM | Eng Speed | EngSpd | n_mot | nmot | Engine revolutions per minute |
     Engine rev/min | Tachometer | tach | Motor Drehzahl | EngineSpeed[rpm] | Engine RPM(rpm) | Speed engine |
     régime`,
  ],
  [
    DEGREES,
    'coolant',
    `Coolant temp(°C) | Coolant temperature | ECT | ECT (°F) | Engine coolant temperature (°C) |
     COOLANT_TEMPERATURE () | ENGINE_COOLANT_TEMP [°C] | CLT | Kühlmitteltemperatur | Kühlmittel (°C) |
     Kühlwassertemperatur °C | Motortemperatur | Température liquide de refroidissement | Temp. eau (°C) |
     température d'eau moteur | Temperatura refrigerante | temperatura del refrigerante (°C) |
     Temperatura del motor | Temperatura agua | Engine temperature | engine temp C | Water temp |
     Eng Coolant | coolant_temp_C | Coolant | EngineCoolantTemp |
     temperatura del líquido refrigerante del motor | Kuehlmitteltemperatur`,
  ],
  [
    TRIM,
    'stft 1',
    `STFT B1 | STFT1 | STFT Bank 1 (%) | Short term fuel trim bank 1 | Short Term Fuel Trim - Bank 1 [%] |
     SHORT_TERM_FUEL_TRIM_BANK_1 (%) | SHRTFT1 | Short FT B1 | Kurzzeit-Kraftstoffkorrektur Bank 1 |
     Kraftstoffkorrektur kurzzeitig Bank 1 | Correction carburant court terme banc 1 |
     Ajuste combustible a corto plazo banco 1 | short fuel trim 1 | Short fuel trim | STFT |
     ajuste de combustible corto plazo | Lambdaregler Bank 1 | ST fuel trim B1 | short-term trim (%)`,
  ],
  [
    TRIM,
    'ltft 1',
    `LTFT B1 | LTFT1 | Long term fuel trim bank 1 | LONG_TERM_FUEL_TRIM_BANK_1 (%) | LONGFT1 | Long FT B1 |
     Langzeit-Kraftstoffkorrektur Bank 1 | Correction carburant long terme | Ajuste combustible largo plazo |
     LTFT | long fuel trim | Gemischadaption`,
  ],
  [TRIM, 'stft 2', `STFT B2 | STFT2 | Short term fuel trim bank 2 | SHRTFT2`],
  [TRIM, 'ltft 2', `LTFT B2 | LONGFT2 | Long term fuel trim bank 2 (%)`],
  [
    SHARE,
    'maf',
    `MAF | MAF (g/s) | Mass air flow | Mass Air Flow Rate(g/s) | MAF air flow rate [g/sec] |
     MAF_AIR_FLOW_RATE | Air flow rate from mass flow sensor | Luftmasse | Luftmassenstrom (kg/h) |
     Luftmassenmesser g/s | Débit d'air (g/s) | débit massique d'air | Flujo de aire | Caudal de aire (g/s) |
     Masa de aire | Airflow | MassAirFlow | flujo másico de aire | maf_gs`,
  ],
  [
    SHARE,
    'load',
    `Load | Calculated load | Calculated engine load (%) | Engine Load | ENGINE_LOAD | Calculated Load Value |
     Last | Motorlast (%) | Lastwert | Charge moteur | charge calculée | Carga |
     carga calculada del motor (%) | load_pct | CLV | Calc load`,
  ],
  [
    SHARE,
    'speed',
    `Speed | Vehicle speed | Vehicle Speed (km/h) | VSS | VEHICLE_SPEED () | Speed (mph) | Geschwindigkeit |
     Fahrzeuggeschwindigkeit | vitesse véhicule | Vitesse (km/h) | Velocidad | Velocidad del vehículo (km/h) |
     VSS km/h | vehicleSpeed | Road speed`,
  ],
  [
    SHARE,
    'throttle',
    `Throttle | Throttle position | Throttle Position (%) | TPS | THROTTLE_POS |
     Absolute throttle position (%) | Drosselklappe | Drosselklappenstellung (%) | Position papillon |
     Posición de la mariposa | posición mariposa | Throttle Pos | ThrottlePosition | tps_pct | papillon`,
  ],
  [
    HOT,
    'catalystTemp 1',
    `Catalyst temperature bank 1 | Catalyst temp | Cat temp (°C) | Katalysatortemperatur | Kat-Temperatur |
     Température catalyseur | Temperatura catalizador | CATEMP | Converter temperature`,
  ],
  [HOT, 'catalystTemp 1 1', `Catalyst Temperature Bank 1 Sensor 1 | CATEMP11 | Catalyst Temp (Bank 1, Sensor 1) [°C]`],
  [HOT, 'catalystTemp 1 2', `Catalyst Temperature Bank 1 Sensor 2 | CATEMP12`],
  [
    DEGREES,
    'intakeAir',
    `IAT | Intake air temperature | Intake Air Temp (°C) | INTAKE_AIR_TEMP | Ansauglufttemperatur |
     Ansaugluft (°C) | Température air admission | Temperatura aire admisión |
     temperatura del aire de admisión (°C) | Inlet air temp | Intake temp | air temp`,
  ],
  [
    STATUS,
    'fuelStatus 1',
    `Fuel system status | Fuel system 1 status | FUEL_SYSTEM_STATUS | Loop | Loop status | closed loop |
     Fuel Sys 1 | FUELSYS1 | Status Lambdaregelung | État système carburant | Estado sistema combustible |
     Fuel status`,
  ],
  [
    DEGREES,
    'other',
    `Ambient air temperature | Oil temperature | Engine oil temp (°C) | Öltemperatur | Température huile |
     temperatura aceite | Transmission temp | Fuel rail pressure | Barometric pressure | Außentemperatur |
     EGT bank 1 | Battery voltage (V) | Control module voltage | Accelerator pedal position D | Fuel level |
     Timing advance | Distance since codes cleared | Run time since engine start | O2 heater B1S1 |
     O2 sensor heater resistance B1S1 | Commanded equivalence ratio | Fuel pressure |
     Intake manifold pressure (kPa) | MAP | EGR commanded | Evap purge | Zündzeitpunkt | avance allumage |
     Fuel rate | Injector pulse width (ms) | Knock retard | Fuel type | Fuel trim cell |
     O2 sensor current (mA) | Catalyst monitor status | Commanded throttle actuator | Fahrpedalstellung |
     gear | Cylinder 1 misfire count | Desired idle speed | Idle speed target`,
  ],
  [
    LAMBDA,
    'upstreamLambda 1 1',
    `Lambda B1S1 | O2 Sensor Wide Range Equivalence Ratio Bank 1 Sensor 1 | Lambda (Bank 1, Sensor 1) | λ B1S1 | Equivalence ratio B1S1 | O2 S1 wide range lambda | O2 B1S1 Lambda | Lambdawert Bank 1 Sonde 1 | A/F sensor B1S1 (λ) | AF lambda B1S1 | richesse sonde amont (λ) | valor lambda banco 1 sensor 1 | Eq ratio B1 S1`,
  ],
  [
    LAMBDA,
    'upstreamLambda 1',
    `Air fuel ratio sensor bank 1 lambda | Lambda | lambda actual | Wideband lambda | Breitbandsonde Lambda | Lambda [λ]`,
  ],
];

describe('what a heading means', () => {
  for (const [behaviour, wanted, headings] of HEADINGS) {
    describe(wanted, () => {
      it.each(headings.split('|').map((heading) => heading.trim()))('%s', (heading) => {
        expect(words(guess(heading, behaviour))).toBe(wanted);
      });
    });
  }
});

describe('names that mean two things', () => {
  it('are decided by the values: a lambda sensor in volts is no air ratio', () => {
    expect(guess('Lambda B1S1', VOLTS)).toMatchObject({ role: 'upstreamO2', unit: 'V' });
    expect(guess('Lambda B1S1', LAMBDA)).toMatchObject({ role: 'upstreamLambda' });
    expect(guess('Lambda B1S1', seen(12, 14.7, 18))).toMatchObject({
      role: 'upstreamLambda',
      unit: 'AFR',
      unitGuessed: true,
    });
    expect(guess('Lambda B1S1', MILLIVOLTS)).toMatchObject({ role: 'upstreamO2', unit: 'mV', unitGuessed: true });
  });

  it('are decided by the unit before the values', () => {
    expect(guess('Lambda B1S1 (V)', LAMBDA)).toMatchObject({ role: 'upstreamO2', unit: 'V' });
    expect(guess('O2 B1S1 (AFR)', seen(12, 14.7, 18))).toMatchObject({ role: 'upstreamLambda', unit: 'AFR' });
  });

  it('do not make an oxygen sensor of a current, a heater or a trim', () => {
    expect(guess('O2 B1S1 current (mA)', seen(-1, 0, 1)).role).toBe('other');
    expect(guess('O2 B1S1 (%)', TRIM).role).toBe('other');
    expect(words(guess('Short term fuel trim B1S1 (%)', TRIM))).toBe('stft 1 1');
  });

  it('are not certain where the sensor’s place is not said, or said twice and differently', () => {
    expect(guess('O2 voltage', VOLTS).certain).toBe(false);
    expect(guess('Rear O2 sensor 1', VOLTS).certain).toBe(false);
    expect(guess('Rear O2', VOLTS).certain).toBe(true);
  });
});

describe('names that only look like one that is scored', () => {
  it.each(
    (
      [
        [seen(7.1, 7.1, 7.2), 'Long | Long. | Lat'],
        [
          TRIM,
          'Long acc | Short | Short circuit | Short term secondary O2 sensor trim bank 1 | Rear O2 fuel trim B1 (%)',
        ],
        [
          SHARE,
          'Last gear | Last update | Electric load | Payload | Charge current | Cruise set speed | Coolant level',
        ],
        [seen(10, 12, 14), 'Fuel mass flow (g/s) | Exhaust mass flow (kg/h) | Débit carburant (g/s) | Coolant flow'],
        [seen(0.6, 1.2, 4.5), 'Throttle voltage | MAF voltage | Air mass flow per cylinder'],
        [LAMBDA, 'Lambda regulation factor | Lambda-Regelfaktor'],
        [HOT, 'HC ppm pre cat | CO pre cat'],
      ] as const
    ).flatMap(([behaviour, headings]) => headings.split('|').map((heading) => [heading.trim(), behaviour] as const)),
  )('%s', (heading, behaviour) => {
    expect(guess(heading, behaviour).role).toBe('other');
  });

  it.each([
    ['TPS A', SHARE, 'throttle'],
    ['EQ_RAT21', LAMBDA, 'upstreamLambda 2 1'],
    ['HEGO12', VOLTS, 'downstreamO2 1 2'],
    ['ego1', VOLTS, 'upstreamO2 1 1'],
    ['Exhaust gas oxygen sensor bank 2 downstream', VOLTS, 'downstreamO2 2 2'],
    ['Lambda B1S1 [mV]', MILLIVOLTS, 'upstreamO2 1 1'],
    ['U_Lambda_vor_Kat [mV]', MILLIVOLTS, 'upstreamO2 1 1'],
    ['T_vor_Kat', HOT, 'catalystTemp 1'],
    ['Catalyst inlet temp', HOT, 'catalystTemp 1'],
    ['Khlmittel', DEGREES, 'coolant'],
    ['Fuel trim short bank 2 (%)', TRIM, 'stft 2'],
    ['Engine speed (rad/s)', seen(70, 200, 330), 'rpm'],
  ])('%s is one', (heading, behaviour, wanted) => {
    expect(words(guess(heading, behaviour))).toBe(wanted);
    expect(guess(heading, behaviour).certain).toBe(true);
  });

  it('are asked about where a bank is only a side, or the number of an air ratio', () => {
    expect(guess('Rear O2 sensor right bank', VOLTS)).toMatchObject({ bank: 2, sensor: 2, certain: false });
    expect(guess('Front O2 sensor left bank', VOLTS)).toMatchObject({ bank: 1, sensor: 1, certain: false });
    expect(guess('Lambda 2', LAMBDA)).toMatchObject({ role: 'upstreamLambda', bank: 2, sensor: 1, certain: false });
  });

  it('are asked about where only a code or a place says sensor, and only the size of the values says mV', () => {
    expect(guess('B1S1', seen(0, 400, 900))).toMatchObject({ role: 'upstreamO2', unit: 'mV', certain: false });
    expect(guess('Rich-lean changes B1S1', seen(30, 50, 69)).role).toBe('other');
  });
});

describe('units that are guessed', () => {
  it('takes a load or a throttle that never exceeds one for parts of one, but an engine that stands for nothing else', () => {
    const parts = { unit: 'parts of 1', unitGuessed: true };
    expect(guess('load', seen(0.17, 0.26, 0.61))).toMatchObject({ role: 'load', ...parts });
    expect(guess('throttlePos', seen(0.06, 0.15, 1))).toMatchObject({ role: 'throttle', ...parts });
    expect(guess('Engine load (%)', seen(0.17, 0.26, 0.61))).toMatchObject({ unit: '%', unitGuessed: false });
    expect(guess('load', { ...seen(0, 0, 0.4), distinct: 2 })).toMatchObject({ unit: '%', unitGuessed: false });
    expect(guess('mafPercentage', seen(0.3, 0.34, 0.4)).role).toBe('other');
  });

  it('coolant above 290 is kelvin', () => {
    expect(guess('Coolant Temp', seen(290, 361, 364))).toMatchObject({ role: 'coolant', unit: 'K', unitGuessed: true });
    expect(guess('Intake air temp', seen(293, 298, 301))).toMatchObject({
      role: 'intakeAir',
      unit: 'K',
      unitGuessed: true,
    });
  });

  it('coolant above 135 is Fahrenheit, and anything in a file that speaks of miles', () => {
    const hot = seen(120, 190, 205);
    expect(guessRole({ index: 0, name: 'Coolant', unit: null }, hot, HABITS)).toMatchObject({
      unit: '°F',
      unitGuessed: true,
    });
    expect(guessRole({ index: 0, name: 'Coolant', unit: null }, DEGREES, { ...HABITS, imperial: true })).toMatchObject({
      unit: '°F',
    });
    expect(guessRole({ index: 0, name: 'Coolant', unit: null }, DEGREES, HABITS)).toMatchObject({
      unit: '°C',
      unitGuessed: false,
    });
  });
});
