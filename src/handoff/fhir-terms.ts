/** Codes, units and identifiers of the bundle, from fixed tables: nothing here is put together from what people wrote. */
import type { CodeableConcept, Quantity } from '@medplum/fhirtypes';
import type { Unit } from '../domain/protocol/types.ts';

/** Names of our own for what has no code in an open standard. A name, not an address. */
export const OWN = 'urn:x-rimwise';
export const LOINC = 'http://loinc.org';
export const UCUM = 'http://unitsofmeasure.org';
const HL7 = 'http://terminology.hl7.org/CodeSystem';

/** UCUM codes of the units a reading may have; points on a scale of our own are a counted thing. */
export const UCUM_CODE: Readonly<Record<Unit, string>> = {
  mm: 'mm',
  weeks: 'wk',
  '°C': 'Cel',
  points: '{points}',
  '°': 'deg',
  g: 'g',
  ml: 'mL',
};

export const quantity = (value: number, unit: Unit): Quantity => ({ value, unit, system: UCUM, code: UCUM_CODE[unit] });

/** Millimetres to a hundredth: what floating point adds behind it was never measured. */
export const mmQuantity = (value: number): Quantity => quantity(Math.round(value * 100) / 100, 'mm');

/** A thing of our own: its id as a code of our own system, and its words. */
export function own(system: string, code: string, text: string): CodeableConcept {
  const display = text.trim() === '' ? codeOf(code) : text;
  return { coding: [{ system: `${OWN}:${system}`, code: codeOf(code), display }], text: display };
}

/** FHIR codes hold no blanks but single ones inside; ids may come from a practice's own protocol. */
const codeOf = (id: string): string => id.trim().replaceAll(/\s+/g, ' ') || 'unnamed';

export const words = (text: string): CodeableConcept => ({ text });

/** Dentistry referral note (LOINC 57134-9, as HL7's Dental Data Exchange guide uses it; second-hand). */
export const NOTE_TYPE: CodeableConcept = {
  coding: [{ system: LOINC, code: '57134-9', display: 'Dentistry Referral note' }],
  text: 'Hand-over to the dental laboratory',
};

export const AMBULATORY = { system: `${HL7}/v3-ActCode`, code: 'AMB', display: 'ambulatory' };
export const PSEUDONYMOUS = { system: `${HL7}/v3-ObservationValue`, code: 'PSEUDED', display: 'pseudonymized' };
