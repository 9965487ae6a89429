#!/usr/bin/env node
// no-unit-test: starts the command line; test/cli runs it as it is built
import { run } from './run';

void run(process.argv);
