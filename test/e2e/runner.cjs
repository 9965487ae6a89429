// What the extension host is told to run (`extensionTestsPath`): test-cli's own runner, as on a desktop. Only what is
// thrown before mocha starts is added to the report, which nobody would see otherwise.
const fs = require('node:fs');
const path = require('node:path');

exports.run = async () => {
  try {
    await require(path.join(path.dirname(require.resolve('@vscode/test-cli')), 'runner.cjs')).run();
  } catch (error) {
    if (error instanceof Error) fs.appendFileSync(process.env.REPORT_FILE, `${error.stack}\n`);
    throw error;
  }
};
