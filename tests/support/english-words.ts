import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import type { Page } from 'playwright-core';

const tables = join(import.meta.dirname, '..', '..', 'src', 'render', 'messages');
const source = (prefix: string) => readdirSync(tables).filter((name) => name.startsWith(prefix)).map((name) => readFileSync(join(tables, name), 'utf8')).join('\n');

/** Names of files are the same in every language. */
const FILE_NAME = /[\w#-]+\.(?:svg|pdf|dxf|json|csv|html|xjdf)\b/g;

/** What stands for words in a table: neither a key nor a value that is compared, chosen by or a type. */
function isSaid(node: ts.Node): boolean {
  const { parent } = node;
  const isKey = (ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent)) && parent.name === node;
  return !isKey && !(ts.isBinaryExpression(parent) || ts.isElementAccessExpression(parent) || ts.isCaseClause(parent) || ts.isLiteralTypeNode(parent) || ts.isImportDeclaration(parent));
}

function textsOf(code: string): string {
  const texts: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteral(node) ? isSaid(node) : ts.isNoSubstitutionTemplateLiteral(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node)) texts.push((node as ts.LiteralLikeNode).text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('table.ts', code, ts.ScriptTarget.Latest, true));
  return texts.map((text) => text.replace(/\{[\w|:²]*\}|--[a-z-]+/g, ' ').replace(FILE_NAME, ' ')).join(' ');
}

const wordsOf = (text: string) => new Set(text.toLowerCase().match(/\p{L}{3,}/gu) ?? []);

/** Names that are right in German too, or are written as they are in files and on keys. */
const SHARED = ['alt', 'backspace', 'blankwright', 'del', 'cut', 'desk', 'english', 'esc', 'json', 'layer', 'script', 'stroke'];

let known: ReadonlySet<string> | undefined;

/** Every word of the English tables that no German table says. */
export function englishWords(): ReadonlySet<string> {
  return (known ??= readWords());
}

function readWords(): ReadonlySet<string> {
  const german = wordsOf(textsOf(source('german-')));
  return new Set([...wordsOf(textsOf(source('english-')))].filter((word) => !german.has(word) && !SHARED.includes(word)));
}

/** Everything a page says, to eyes and to a screen reader, part by part. */
export function saidOn(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const said: string[] = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = texts.nextNode(); node; node = texts.nextNode()) if (!node.parentElement?.closest('script, style, noscript')) said.push(node.textContent ?? '');
    for (const element of document.querySelectorAll('*')) for (const name of ['aria-label', 'aria-description', 'aria-valuetext', 'title', 'placeholder', 'alt']) said.push(element.getAttribute(name) ?? '');
    return [...new Set(said.map((text) => text.trim()).filter((text) => text !== ''))];
  });
}

/** Parts in which an English word stands, each with the words; `names` are no words of ours. */
export function englishIn(said: readonly string[], names: readonly string[]): string[] {
  const english = englishWords();
  return said.flatMap((part) => {
    const bare = names.reduce((text, name) => text.replaceAll(name, ' '), part)
      // A name as the drawing has it.
      .replace(/„[^“]*“/g, ' ')
      .replace(FILE_NAME, ' ');
    const left = [...wordsOf(bare)].filter((word) => english.has(word));
    return left.length > 0 ? [`${left.join(' ')}: ${part}`] : [];
  });
}
