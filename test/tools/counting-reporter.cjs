// Mocha's own `spec` report, and the counts as JSON in the file that RESULT_FILE names: written after every test,
// so that a process that dies in the middle leaves `ended: false` behind. Inside the extension host nobody sees the
// standard output: there REPORT_FILE takes the report.
const fs = require('node:fs');
const { format } = require('node:util');
const { Base, Spec } = require('mocha').reporters;

const { RESULT_FILE, REPORT_FILE } = process.env;
if (REPORT_FILE) Base.consoleLog = (...line) => fs.appendFileSync(REPORT_FILE, `${format(...line)}\n`);

module.exports = class CountingReporter extends Spec {
  constructor(runner, options) {
    super(runner, options);
    const counts = { passed: 0, failed: 0, ended: false };
    const save = () => fs.writeFileSync(RESULT_FILE, JSON.stringify(counts));
    save();
    runner.on('pass', () => save(counts.passed++));
    runner.on('fail', () => save(counts.failed++));
    // a skipped test is a test that nobody ran
    runner.on('pending', () => save(counts.failed++));
    runner.on('end', () => save((counts.ended = true)));
  }
};
