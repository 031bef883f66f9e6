// node check-toml.mjs SCHEMA FILE...
// Reads TOML with a parser made by others, holds it against the JSON Schema with a validator made by others, and prints one JSON
// line a file with every complaint.
import { readFileSync } from 'node:fs';
import Ajv from 'ajv-draft-04';
import { parse } from 'smol-toml';

const [schema, ...files] = process.argv.slice(2);
const validate = new Ajv({ allErrors: true, strict: false }).compile(JSON.parse(readFileSync(schema, 'utf8')));
for (const file of files) {
  const fits = validate(parse(readFileSync(file, 'utf8')));
  console.log(JSON.stringify({ file, complaints: fits ? [] : validate.errors.map(e => `${e.instancePath} ${e.message}`) }));
}
