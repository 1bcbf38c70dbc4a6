// Runs in a thread of its own, so that the tests can ask for a native answer and stand still until it is there. It
// passes each list of words on to the program that answers, and what the program says back.
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { workerData } from 'node:worker_threads';

const { program, port, signal } = workerData;
const answers = spawn(program, { stdio: ['pipe', 'pipe', 'inherit'] });

function reply(message) {
  port.postMessage(message);
  Atomics.add(signal, 0, 1);
  Atomics.notify(signal, 0);
}

port.on('message', (words) => answers.stdin.write(`${JSON.stringify(words)}\n`));
createInterface(answers.stdout).on('line', (line) => reply(JSON.parse(line)));
answers.on('error', (error) => reply({ err: error.message }));
answers.on('exit', (code) => reply({ err: `${program} ended with ${code}` }));
