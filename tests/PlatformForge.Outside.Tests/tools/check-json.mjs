// node check-json.mjs SCHEMA FILE...
// Holds JSON against a JSON Schema of draft 2020-12 with a validator made by others, and prints one JSON line a file with every complaint.
import { readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';

const [schema, ...files] = process.argv.slice(2);
const validate = new Ajv({ allErrors: true, strict: false }).compile(JSON.parse(readFileSync(schema, 'utf8')));
for (const file of files) {
  const fits = validate(JSON.parse(readFileSync(file, 'utf8')));
  console.log(JSON.stringify({ file, complaints: fits ? [] : validate.errors.map(e => `${e.instancePath} ${e.message}`) }));
}
