// node read-cuts.mjs FILE...
// Reads DXF of cut lines with a parser made by others and prints one JSON line an entity: its file, its layer, its kind, whether it is closed, its points in drawing units.
import { readFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';

for (const file of process.argv.slice(2)) for (const e of new DxfParser().parseSync(readFileSync(file, 'utf8')).entities) {
  const points = (e.vertices ?? [e.startPoint ?? e.center ?? e.position]).map(p => [p.x, p.y]);
  console.log(JSON.stringify({ file, layer: e.layer, kind: e.type, closed: Boolean(e.shape), text: e.text ?? '', radius: e.radius ?? 0, points }));
}
