import type { Project } from '../model/project.ts';
import { contextOf } from './rules/context.ts';
import { measureBass } from './rules/measure-bass.ts';
import { measureFront } from './rules/measure-front.ts';
import { measureLayout } from './rules/measure-layout.ts';
import { measurePlace } from './rules/measure-place.ts';
import { measureSafety } from './rules/measure-safety.ts';
import { measureSight } from './rules/measure-sight.ts';
import { measureSound } from './rules/measure-sound.ts';
import { overridesOf } from './rules/overrides.ts';
import { distanceOutside, judge, type Measurement, type Ranges } from './rules/rule.ts';
import { sentenceOf } from './rules/sentence.ts';
import { metric } from './rules/speak.ts';
import { type RuleId, ruleOf } from './rules/table.ts';
import type { BassReadout, Finding, GeometryReadout, Verdict } from './types.ts';

const open: Ranges = { range: [null, null], closeRange: [null, null] };

const findingOf = (project: Project, measured: Measurement<RuleId>, override: Ranges | undefined): Finding => {
  const { rule, seat, item, part, value, causes, facts } = measured;
  const { set } = project.targets;
  const { unit, weight, source, ranges } = ruleOf(rule);
  const wanted = override ?? measured.ranges ?? ranges?.[set] ?? open;
  const finding: Finding = {
    id: [rule, seat ?? '', item ?? '', ...(part === undefined ? [] : [part])].join('/'),
    rule,
    set,
    seat,
    item,
    value,
    unit,
    ...wanted,
    verdict: judge(value, wanted),
    weight,
    text: '',
    source: measured.source ?? source,
    causes,
    facts: facts ?? {},
  };
  return { ...finding, text: sentenceOf(finding, metric) };
};

const order: Readonly<Record<Verdict, number>> = { missed: 0, close: 1, met: 2 };

/** The distance outside the range as a share of what separates met from missed, so that degrees and decibels compare. */
const severity = ({ value, range, closeRange }: Finding): number => {
  const low = range[0] !== null && closeRange[0] !== null ? range[0] - closeRange[0] : 0;
  const high = range[1] !== null && closeRange[1] !== null ? closeRange[1] - range[1] : 0;
  const below = value !== null && range[0] !== null && value < range[0];
  const allowance = below ? low : high;
  const distance = distanceOutside(value, range);
  return allowance > 0 ? distance / allowance : distance;
};

const worstFirst = (a: Finding, b: Finding): number =>
  order[a.verdict] - order[b.verdict] || b.weight - a.weight || severity(b) - severity(a);

/**
 * Everything the rules say of the room, worst first: missed before close before met, then by weight, then by how far the
 * value lies outside its range. Layout angles are judged at the reference seat only. Bass findings are left out while
 * `bass` is null. Ids stay the same while the things they name do.
 */
export const findings = (project: Project, geometry: GeometryReadout, bass: BassReadout | null): Finding[] => {
  const context = contextOf(project, geometry, bass);
  const overrides = overridesOf(project);
  return [
    ...measureFront(context),
    ...measureLayout(context),
    ...measureSight(context),
    ...measureSound(context),
    ...measureBass(context),
    ...measureSafety(context),
    ...measurePlace(context),
  ]
    .map((measured) => findingOf(project, measured, overrides.get(measured.rule)))
    .sort(worstFirst);
};
