import assert from 'node:assert/strict';
import fs from 'node:fs';
import { explain, rules } from '../../src/rules';
import { ruleOf } from './support/rule-of';

/** Every folder of `src/rules` is a rule. */
const folders = fs
  .readdirSync('src/rules', { withFileTypes: true })
  .filter(entry => entry.isDirectory())
  .map(entry => entry.name);

describe('the rules', () => {
  it('stand in the index, one for each folder, in order', () => {
    assert.deepEqual(
      rules.map(rule => rule.id),
      folders.toSorted(),
    );
  });

  for (const folder of folders) {
    describe(folder, () => {
      it('has a page that names it, its description, severity and options', () => {
        const { description, severity, options } = ruleOf(folder);
        const page = explain(folder)!;
        assert.equal(page, fs.readFileSync(`src/rules/${folder}/README.md`, 'utf8'));
        assert.ok(page.startsWith(`# ${folder}\n\n${description} `), 'title, then the description');
        assert.match(page.split('\n')[2], new RegExp(`\\b${severity}\\b`, 'i'));
        for (const heading of ['## In print', '## What to do', '## When to ignore it'])
          assert.ok(page.includes(`\n${heading}\n`), heading);
        for (const [name, { default: value }] of Object.entries(options.properties))
          assert.ok(
            page.includes(`- \`${name}\` (default ${typeof value === 'string' ? `\`"${value}"\`` : value})`),
            `option ${name} with its default`,
          );
      });

      it('has a closed schema whose options have a default and a description', () => {
        const { options } = ruleOf(folder);
        assert.equal(options.type, 'object');
        assert.equal(options.additionalProperties, false);
        for (const [name, option] of Object.entries(options.properties)) {
          assert.ok(option.description, `${name}: description`);
          assert.notEqual(option.default, undefined, `${name}: default`);
        }
      });

      it('has messages for people: whole sentences of their own', () => {
        for (const [name, template] of Object.entries(ruleOf(folder).messages)) {
          assert.match(template, /[.}]$/, `${name} ends as a sentence`);
          assert.ok(!/evengrey convert/.test(template), `${name} promises no command that does not exist`);
        }
      });

      it('has a test that shows pictures that pass and pictures that fail', () => {
        const test = fs.readFileSync(`test/rules/${folder}/index.test.ts`, 'utf8');
        assert.match(test, /\n {2}describe\('pass/);
        assert.match(test, /\n {2}describe\('fail/);
      });
    });
  }

  it('explain nothing that is no rule', () => assert.equal(explain('no-such-rule'), null));
});
