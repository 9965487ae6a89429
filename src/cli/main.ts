#!/usr/bin/env node
import { run } from './run';

void run(process.argv);
