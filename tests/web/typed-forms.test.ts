import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const web = fileURLToPath(new URL('../../src/web/', import.meta.url));

/** What people type into or choose from; `src/web/parts` makes each of the elements of HTML. */
const fields = new Set([
  ...['Field', 'TextField', 'SelectField', 'NumberField', 'Choices', 'Chips', 'Tick', 'Ticks', 'NewPassword'],
  ...['input', 'textarea', 'select'],
]);

/** What is set by a field and is gone with the screen, on purpose. */
const goesWithTheScreen: Record<string, string> = {
  'admin/members.tsx setPassword': 'a password is never kept on a device',
  'sign-in/sign-in.tsx setShown': 'whether a password can be read on the screen',
  'sign-in/second-step.tsx setCode': 'a code is good for a minute, and once',
  'settings/second-factor.tsx setTyped': 'a password is never kept on a device',
  'settings/password.tsx setTyped': 'a password is never kept on a device',
  'admin/audit-log.tsx setMemberId': 'whose entries are shown',
  'admin/fault-model.tsx setSearch': 'what of a list is shown',
  'admin/figures/example.tsx setSymptom': 'which symptom the example has',
  'dispatcher/board/find.tsx setTyped': 'stands in the address',
  'dispatcher/board/find.tsx setState': 'stands in the address',
  'edids/limited-edid.tsx setLink': 'which limits the file that is made at once has',
  'edids/limited-edid.tsx setWithout': 'which limits the file that is made at once has',
  'place/chain-versions.tsx setFrom': 'which versions are compared',
  'place/chain-versions.tsx setTo': 'which versions are compared',
  'second-line/chain-part.tsx setChangeId': 'which change the drawing shows',
  'second-line/packets.tsx setName': 'the name of a file that is checked here and now',
  'second-line/past-cases.tsx setTyped': 'stands in the address',
  'second-line/queue.tsx setOrder': 'how a list is sorted',
  'second-line/suspects-part.tsx setScale': 'how a plot is drawn',
  'second-line/times-part.tsx setZoom': 'which days a plot shows',
};
/** Whether something was said of the form, such as that it is saved: nothing that anybody typed. */
const isNotice = (setter: string): boolean =>
  /^set(Saved|Kept|Set|Done|Wrong|Lacking|Changed|Lacks|TooShort|NoTime|Half|Failed)$/.test(setter);

/** `useState` setters that a field of the file calls. */
function settersInFields(path: string): string[] {
  const file = ts.createSourceFile(
    path,
    readFileSync(path, 'utf8'),
    ts.ScriptTarget.Latest,
    true,
    ts.ScriptKind.TSX,
  );
  const setters = new Set<string>();
  const called: string[] = [];
  const visit = (node: ts.Node, isInField: boolean): void => {
    if (
      ts.isVariableDeclaration(node) &&
      ts.isArrayBindingPattern(node.name) &&
      node.initializer !== undefined &&
      ts.isCallExpression(node.initializer) &&
      node.initializer.expression.getText() === 'useState'
    )
      setters.add(node.name.elements[1]?.getText() ?? '');
    const isField =
      (ts.isJsxSelfClosingElement(node) || ts.isJsxOpeningElement(node)) &&
      fields.has(node.tagName.getText());
    if (isInField && ts.isIdentifier(node)) called.push(node.text);
    ts.forEachChild(node, (child) => visit(child, isInField || isField));
  };
  visit(file, false);
  // A setter behind a function of its own: `change` that calls `setDraft`.
  const text = file.text;
  const through = called.flatMap((name) =>
    [...setters].filter((setter) =>
      new RegExp(`const ${name} = [^;]*?=>[^]{0,200}?\\b${setter}\\(`).test(
        text.slice(text.indexOf(`const ${name} = `)),
      ),
    ),
  );
  return [...new Set([...called.filter((name) => setters.has(name)), ...through])];
}

const screens = readdirSync(web, { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.tsx'),
);

describe('what is typed', () => {
  it('is kept on the device, in every form of the client', () => {
    const lost = screens.flatMap((name) =>
      settersInFields(join(web, name))
        .filter((setter) => !isNotice(setter))
        .map((setter) => `${name} ${setter}`),
    );
    expect(lost.sort()).toEqual(Object.keys(goesWithTheScreen).sort());
  });
});
