// node read-cuts.mjs FILE
// Reads a DXF of cut lines with a parser made by others and prints one JSON line an entity: its layer, its kind, whether it is closed, its points in drawing units.
import { readFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';

const drawing = new DxfParser().parseSync(readFileSync(process.argv[2], 'utf8'));
for (const e of drawing.entities) {
  const points = (e.vertices ?? [e.startPoint ?? e.center ?? e.position]).map(p => [p.x, p.y]);
  console.log(JSON.stringify({ layer: e.layer, kind: e.type, closed: Boolean(e.shape), text: e.text ?? '', radius: e.radius ?? 0, points }));
}
