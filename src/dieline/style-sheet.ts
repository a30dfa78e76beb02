import { generate, parse, type CssNode, type Rule } from 'css-tree';
import { READING_LIMITS } from './limits.ts';
import { limitPassed, type XmlElement } from './xml.ts';

/** One `property: value`. */
export interface Declaration {
  readonly property: string;
  readonly value: string;
  readonly important: boolean;
}

export interface StyleSheet {
  /** Declarations that apply to the element, weakest first (specificity, then order); importance is not yet looked at. */
  declarationsFor(element: XmlElement): readonly Declaration[];
  /** Selectors that are not understood; their rules apply to nothing. */
  readonly unread: readonly string[];
}

/** One simple selector sequence such as `path.cut#k3[data-x="1"]`. */
interface Compound {
  type?: string;
  id?: string;
  readonly classes: string[];
  readonly attributes: { name: string; value: string | undefined }[];
}

/** A compound and how the one to its left relates to it. */
interface Step {
  readonly compound: Compound;
  readonly before: ' ' | '>' | undefined;
}

interface StyleRule {
  /** Rightmost first. */
  readonly steps: readonly Step[];
  readonly specificity: number;
  readonly order: number;
  readonly declarations: readonly Declaration[];
}

/** Reads type, class, id, attribute and universal selectors with descendant and child combinators. */
export function parseStyleSheet(text: string): StyleSheet {
  if (text.length > READING_LIMITS.styleCharacters) throw limitPassed('characters of style sheets', READING_LIMITS.styleCharacters);
  const rules: StyleRule[] = [];
  const unread: string[] = [];
  for (const rule of plainRules(parse(text, { onParseError: () => {} }))) {
    const declarations = declarationsOf(rule.block);
    if (rule.prelude.type !== 'SelectorList') continue;
    for (const selector of rule.prelude.children) {
      const steps = stepsOf(selector);
      if (!steps) unread.push(generate(selector));
      else rules.push({ steps, specificity: specificityOf(steps), order: rules.length, declarations });
      if (rules.length > READING_LIMITS.styleRules) throw limitPassed('style rules', READING_LIMITS.styleRules);
    }
  }
  return { declarationsFor: createMatcher(rules), unread };
}

/** Declarations of a `style` attribute. */
export function parseStyleAttribute(text: string): readonly Declaration[] {
  return declarationsOf(parse(text, { context: 'declarationList', onParseError: () => {} }));
}

/** Rules outside at-rules and those of `@media` for screen, print or all; every other at-rule is left out. */
function plainRules(sheet: CssNode): Rule[] {
  if (sheet.type !== 'StyleSheet' && sheet.type !== 'Block') return [];
  return sheet.children.toArray().flatMap((node) => {
    if (node.type === 'Rule') return [node];
    const medium = node.type === 'Atrule' && node.name === 'media' && node.prelude ? generate(node.prelude) : '';
    return node.type === 'Atrule' && node.block && /^(all|screen|print)$/.test(medium) ? plainRules(node.block) : [];
  });
}

function declarationsOf(block: CssNode): Declaration[] {
  if (block.type !== 'Block' && block.type !== 'DeclarationList') return [];
  return block.children.toArray().flatMap((node) =>
    node.type === 'Declaration'
      ? [{ property: node.property.toLowerCase(), value: generate(node.value).trim(), important: node.important !== false }]
      : [],
  );
}

function stepsOf(selector: CssNode): Step[] | undefined {
  if (selector.type !== 'Selector') return undefined;
  const steps: Step[] = [];
  let compound: Compound = { classes: [], attributes: [] };
  let before: Step['before'];
  for (const part of selector.children) {
    switch (part.type) {
      case 'TypeSelector':
        if (part.name !== '*') compound.type = part.name;
        break;
      case 'ClassSelector':
        compound.classes.push(part.name);
        break;
      case 'IdSelector':
        compound.id = part.name;
        break;
      case 'AttributeSelector':
        if (part.matcher !== null && part.matcher !== '=') return undefined;
        compound.attributes.push({ name: part.name.name, value: part.value ? (part.value.type === 'String' ? part.value.value : part.value.name) : undefined });
        break;
      case 'Combinator':
        if (part.name !== ' ' && part.name !== '>') return undefined;
        steps.unshift({ compound, before });
        compound = { classes: [], attributes: [] };
        before = part.name;
        break;
      default:
        return undefined;
    }
  }
  return [{ compound, before }, ...steps];
}

/** Ids, then classes and attributes, then types; a thousand of one never outweigh one of the next. */
function specificityOf(steps: readonly Step[]): number {
  return steps.reduce(
    (sum, { compound: { id, classes, attributes, type } }) =>
      sum + (id ? 1e6 : 0) + 1e3 * (classes.length + attributes.length) + (type ? 1 : 0),
    0,
  );
}

/** Rules are looked up by what their rightmost compound asks for, so that long sheets cost little an element. */
function createMatcher(rules: readonly StyleRule[]): StyleSheet['declarationsFor'] {
  const byKey = new Map<string, StyleRule[]>();
  for (const rule of rules) {
    const { id, classes, type } = rule.steps[0].compound;
    const key = id !== undefined ? `#${id}` : classes.length > 0 ? `.${classes[0]}` : (type ?? '*');
    const same = byKey.get(key);
    if (same) same.push(rule);
    else byKey.set(key, [rule]);
  }
  if (byKey.size === 0) return () => [];
  return (element) => {
    const keys = [element.name, '*', ...(element.attributes.id === undefined ? [] : [`#${element.attributes.id}`]), ...classesOf(element).map((name) => `.${name}`)];
    const matching = keys.flatMap((key) => byKey.get(key) ?? []).filter(({ steps }) => matches(element, steps));
    matching.sort((a, b) => a.specificity - b.specificity || a.order - b.order);
    return matching.flatMap(({ declarations }) => declarations);
  };
}

export function classesOf(element: XmlElement): string[] {
  return element.attributes.class?.split(/\s+/).filter((name) => name !== '') ?? [];
}

/**
 * Walks outwards. After a descendant combinator the nearest ancestor that fits is taken; where a child combinator then
 * fails, only the latest such choice is moved further out, so the work is at most depth × steps.
 */
function matches(element: XmlElement, steps: readonly Step[]): boolean {
  if (!matchesCompound(element, steps[0].compound)) return false;
  let at = element;
  let choice: { at: XmlElement; step: number } | undefined;
  for (let i = 1; i < steps.length; i++) {
    const child = steps[i - 1].before === '>';
    if (child && at.parent && matchesCompound(at.parent, steps[i].compound)) {
      at = at.parent;
      continue;
    }
    if (child && choice) i = choice.step;
    const found = child && !choice ? undefined : nearestAncestor((child ? choice : { at })!.at, steps[i].compound);
    if (!found) return false;
    at = found;
    choice = { at, step: i };
  }
  return true;
}

function nearestAncestor(element: XmlElement, compound: Compound): XmlElement | undefined {
  let ancestor = element.parent;
  while (ancestor && !matchesCompound(ancestor, compound)) ancestor = ancestor.parent;
  return ancestor;
}

function matchesCompound(element: XmlElement, { type, id, classes, attributes }: Compound): boolean {
  if (type !== undefined && type !== element.name) return false;
  if (id !== undefined && id !== element.attributes.id) return false;
  if (classes.length > 0) {
    const own = classesOf(element);
    if (!classes.every((name) => own.includes(name))) return false;
  }
  return attributes.every(({ name, value }) => element.attributes[name] !== undefined && (value === undefined || element.attributes[name] === value));
}
