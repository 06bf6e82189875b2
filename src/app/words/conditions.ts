/** What is to be said of the conditions beside every finding. */
import { kpaFromPsi, psiFromKpa } from '../../basics/units.ts';
import type { Procedure } from '../../finding/procedure.ts';
import type { AskedCondition, ConditionNote, Gauge } from '../../record/condition-notes.ts';

export const CONDITION_NAMES: Readonly<Record<AskedCondition, string>> = {
  wheelsChocked: 'Wheels chocked',
  engineOff: 'Engine off',
  springBrakesReleased: 'Spring brakes released',
  fullApplication: 'Pedal fully down and held',
  drumsCold: 'Drums cold',
};

/** What it does to the stroke, in the trade's words; how much has no source. */
const WHY: Readonly<Record<AskedCondition, string>> = {
  wheelsChocked: 'Chock the wheels before the spring brakes are released: nothing else holds the vehicle.',
  engineOff: 'The procedures ask for a stopped engine.',
  springBrakesReleased: 'With the spring brake on, the rod is already out and the stroke reads short.',
  fullApplication: 'A pedal not fully down, or let up, gives a short stroke.',
  drumsCold: 'A hot drum is larger: the stroke reads long.',
};

const PROCEDURE_NAMES: Readonly<Record<Procedure, string>> = {
  roadside: 'the roadside procedure',
  periodic: 'the periodic inspection',
};

const PROCEDURE_HEADINGS: Readonly<Record<Procedure, string>> = {
  roadside: 'Roadside',
  periodic: 'Periodic inspection',
};

const GAUGE_NAMES: Readonly<Record<Gauge, string>> = {
  before: 'before the application',
  held: 'while the pedal is held',
};

/** A procedure to choose, with what it asks of the gauge. */
export const procedureText = ({ procedure, gauge, fromPsi, toPsi }: Omit<Asked, 'code'>) =>
  `${PROCEDURE_HEADINGS[procedure]}: ${fromPsi} to ${toPsi} psi ${GAUGE_NAMES[gauge]}`;

export const psiText = (kpa: number) => `${Math.round(psiFromKpa(kpa))} psi (${Math.round(kpa)} kPa)`;

const psiRangeText = (fromPsi: number, toPsi: number) =>
  `${fromPsi} to ${toPsi} psi (${Math.round(kpaFromPsi(fromPsi))} to ${Math.round(kpaFromPsi(toPsi))} kPa)`;

export function conditionNoteText(note: ConditionNote): string {
  switch (note.code) {
    case 'conditions/not-answered':
      return `${CONDITION_NAMES[note.condition]}: not said. ${WHY[note.condition]}`;
    case 'conditions/not-met':
      return `${CONDITION_NAMES[note.condition]}: no. ${WHY[note.condition]}`;
    case 'conditions/cannot-tell':
      return `${CONDITION_NAMES[note.condition]}: nobody could tell. ${WHY[note.condition]}`;
    case 'conditions/pressure-missing':
      return `Reservoir pressure ${GAUGE_NAMES[note.gauge]} is missing: ${askedText(note)}`;
    case 'conditions/pressure-low':
      return `Reservoir pressure ${GAUGE_NAMES[note.gauge]} ${psiText(note.pressureKpa)} is low, and the stroke reads short: ${askedText(note)}`;
    case 'conditions/pressure-high':
      return `Reservoir pressure ${GAUGE_NAMES[note.gauge]} ${psiText(note.pressureKpa)} is high, and the stroke reads long: ${askedText(note)}`;
    case 'conditions/pressure-too-high':
      return `${psiText(note.pressureKpa)}: above about ${note.tooHighFromPsi} psi the stroke is no fair reading.`;
  }
}

type Asked = Extract<ConditionNote, { code: 'conditions/pressure-missing' }>;

function askedText({ procedure, fromPsi, toPsi }: Pick<Asked, 'procedure' | 'fromPsi' | 'toPsi'>): string {
  return `${PROCEDURE_NAMES[procedure]} asks for ${psiRangeText(fromPsi, toPsi)}.`;
}

/** Beside every finding where a condition is open. */
export const CONDITIONS_OPEN = 'The stroke was taken with conditions missing or not as asked:';
