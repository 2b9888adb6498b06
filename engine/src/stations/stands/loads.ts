import { contactLength, contactRatio, meanRate, strainOf } from '../../phenomena/rolling/contact.ts';
import { forceLaws, forceRange, type LawRange, rollForce } from '../../phenomena/rolling/force.ts';
import type { HotPass } from '../../phenomena/rolling/pass.ts';
import { neutralAngle, neutralHeight } from '../../phenomena/rolling/sims.ts';
import { leverArm } from '../../phenomena/rolling/torque.ts';
import type { FlowStressLaw } from '../../steel/flow-stress.ts';
import type { Composition } from '../../steel/grade.ts';
import type { Element } from './elements.ts';

/** Name under which a stand asks for the friction hill of thin stock or the hard core of thick, whichever is larger. */
export const largerOfTwo = 'larger of Sims and slip line';

/** What a stand's loads depend on beside the shapes. */
export interface LoadRule {
  readonly flowStress: FlowStressLaw;
  readonly composition: Composition;
  readonly forceLaw: string;
  readonly force: number;
  readonly torque: number;
  readonly friction: number;
  /** m/s at the rolls. */
  readonly speed: number;
  /** Radius of the driven rolls at which that speed holds, m. */
  readonly workingRadius: number;
}

/** One element under load. N, Pa, 1/s. */
export interface LoadedElement {
  readonly element: Element;
  readonly pass: HotPass;
  readonly strain: number;
  readonly rate: number;
  readonly force: number;
  readonly pressure: number;
}

/** Loads of the stand with the bar at given temperatures. */
export interface Loads {
  readonly elements: readonly LoadedElement[];
  /** N, horizontal rolls, flanks included. */
  readonly force: number;
  readonly footForce: number;
  readonly headForce: number;
  /** N·m on each horizontal roll; W on both. */
  readonly torque: number;
  readonly power: number;
}

/** Below this draught an element counts as untouched, m: under any law's resolution. */
const leastDraught = 2e-5;

/** temperatures: °C of each element. */
export function loadsOf(
  elements: readonly Element[],
  temperatures: readonly number[],
  rule: LoadRule,
): Loads {
  const loaded = elements.map((element, i) => loadedElement(element, temperatures[i], rule));
  let [force, footForce, headForce, work] = [0, 0, 0, 0];
  for (const { element, pass, force: own } of loaded) {
    if (own === 0) continue;
    const L = contactLength(pass);
    if (element.roll === 'foot roll') footForce += own;
    if (element.roll === 'head roll') headForce += own;
    force += own * towardsHorizontal(element);
    // Per metre of bar: two driven rolls turn against their arms; an idle roll is dragged round by the bar.
    const arms = leverArm(pass) * L;
    work += element.roll === 'horizontal' ? (2 * own * arms) / element.R : (own * arms) / (element.R / 2);
  }
  const torque = (rule.torque * work * rule.workingRadius) / 2;
  return {
    elements: loaded,
    force,
    footForce,
    headForce,
    torque,
    power: (2 * torque * rule.speed) / rule.workingRadius,
  };
}

/** Share of an element's force that the horizontal rolls bear: all of their own, and what leans on their flanks of others. */
const towardsHorizontal = ({ roll, leaning, b0, b1 }: Element): number =>
  roll === 'horizontal' ? 1 : leaning / ((b0 + b1) / 2);

function loadedElement(element: Element, temperature: number, rule: LoadRule): LoadedElement {
  const { h0, h1, b0, b1, R } = element;
  const still = { h0, h1, b0, b1, R, friction: rule.friction, temperature, speed: rule.speed };
  const touched = h0 - h1 > leastDraught && h1 > 0 && b1 > 1e-4;
  if (!touched) {
    const pass = { ...still, h0: h1, composition: rule.composition, flowStress: 0 };
    return { element, pass, strain: 0, rate: 0, force: 0, pressure: 0 };
  }
  const strain = strainOf(still);
  const rate = Math.max(0.05, meanRate(still, rule.speed));
  const flowStress = rule.flowStress.mean(strain, rate, temperature);
  const pass: HotPass = { ...still, composition: rule.composition, flowStress };
  const force = rule.force * forceBy(rule.forceLaw, pass);
  return { element, pass, strain, rate, force, pressure: force / (((b0 + b1) / 2) * contactLength(pass)) };
}

function forceBy(name: string, pass: HotPass): number {
  if (name === largerOfTwo) return rollForce(pass);
  const law = forceLaws.find((each) => each.name === name);
  return law ? law.force(pass) : rollForce(pass);
}

export const isForceLaw = (name: string): boolean =>
  name === largerOfTwo || forceLaws.some((law) => law.name === name);

/**
 * The laws side by side for the force of the horizontal rolls, N, flanks included, the one in use among them, and what
 * they leave open, as shares of the force in use.
 */
export function forceOfLaws({ elements, force }: Loads, { forceLaw, force: factor }: ForceModel) {
  const pressed = elements
    .filter(({ force: own, element }) => own > 0 && towardsHorizontal(element) > 0)
    .map(({ element, pass }) => ({ weight: factor * towardsHorizontal(element), range: forceRange(pass) }));
  const sumOf = (of: (range: LawRange) => number) =>
    pressed.reduce((sum, { weight, range }) => sum + weight * of(range), 0);
  const laws = forceLaws.map(({ name }) => ({
    law: name,
    force: sumOf((range) => lawOf(range, name)?.value ?? 0),
    within: pressed.length > 0 && pressed.every(({ range }) => lawOf(range, name)?.holds === true),
  }));
  const used = sumOf(({ value }) => value);
  return {
    laws: forceLaw === largerOfTwo ? [{ law: forceLaw, force, within: pressed.length > 0 }, ...laws] : laws,
    low: used === 0 ? 1 : sumOf(({ low }) => low) / used,
    high: used === 0 ? 1 : sumOf(({ high }) => high) / used,
  };
}

type ForceModel = Pick<LoadRule, 'forceLaw' | 'force'>;

const lawOf = ({ laws }: LawRange, name: string) => laws.find((law) => law.name === name);

/**
 * How much faster the bar leaves than the rolls turn: Sims's neutral plane in the element that carries most force. Thick
 * stock slips less, because its core runs ahead of its skin: x³/(x³ + 0.4), x = L/h_m, fitted to three own 3-D solutions.
 */
export function forwardSlipOf({ elements }: Loads): number {
  const pressed = elements.filter(({ force, element }) => force > 0 && element.roll === 'horizontal');
  if (pressed.length === 0) return 0;
  const { pass } = pressed.reduce((most, each) => (each.force > most.force ? each : most));
  const plain = (neutralHeight(pass) / pass.h1) * Math.cos(neutralAngle(pass)) - 1;
  const thin = contactRatio(pass) ** 3;
  return (Math.min(0.15, Math.max(0, plain)) * thin) / (thin + 0.4);
}
