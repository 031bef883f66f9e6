// What a loader made for browsers asks of their XML: elements, their attributes and text, and which elements of a name lie below. Read by a parser
// made by others. A whole document object model keeps a dozen objects for each of a hundred thousand triangles, and takes ten times as long.
import { Parser } from 'htmlparser2';

class Element {
  constructor(nodeName, attribs) {
    this.nodeName = nodeName;
    this.localName = nodeName.slice(nodeName.indexOf(':') + 1);
    this.attribs = attribs;
    this.children = [];
    this.textContent = '';
    this.below = null; // elements by name, once they were asked for
  }

  get attributes() { return Object.entries(this.attribs).map(([name, value]) => ({ name, value })); }

  getAttribute(name) { return this.attribs[name] ?? null; }

  // A name, or names from the outermost to the innermost.
  querySelectorAll(selector) {
    const names = selector.split(' ');
    if (!names.every(n => /^\w+$/.test(n))) throw new Error(`not made for '${selector}'`);
    return names.reduce((from, name) => from.flatMap(e => e.named(name)), [this]);
  }

  querySelector(selector) { return this.querySelectorAll(selector)[0] ?? null; }

  getElementsByTagNameNS(space, name) {
    if (this.named(name).length > 0) throw new Error(`not made for '${name}' of ${space}`);
    return [];
  }

  named(name) {
    if (!this.below) {
      this.below = new Map();
      const walk = element => {
        for (const child of element.children) {
          if (!this.below.has(child.localName)) this.below.set(child.localName, []);
          this.below.get(child.localName).push(child);
          walk(child);
        }
      };
      walk(this);
    }
    return this.below.get(name) ?? [];
  }
}

export class DOMParser {
  parseFromString(text) {
    const open = [new Element('#document', {})];
    const parser = new Parser({
      onopentag(name, attribs) {
        const element = new Element(name, attribs);
        open.at(-1).children.push(element);
        open.push(element);
      },
      onclosetag() { open.pop(); },
      ontext(data) { open.at(-1).textContent += data; },
      onerror(error) { throw error; },
    }, { xmlMode: true, decodeEntities: true });
    parser.write(text);
    if (open.length !== 1 || open[0].children.length !== 1) throw new Error('not one element with all others closed in it');
    parser.end();
    open[0].documentElement = open[0].children[0];
    return open[0];
  }
}
