// What a stranger makes of a lay-up book: from the lettered corners, the edges and
// two distances he works out where each joint runs, and from the words which side
// of each piece is up. Held against plan.json.

// A distance is printed to 0.5 mm, a corner to 0.1 mm.
const nearMM = 0.36;
const mm = words => parseFloat(/(-?[\d.]+) mm/.exec(words)?.[1]);

export async function rebuilt(page, plan) {
  const read = await page.evaluate(() => {
    const cells = table => [...(table?.tBodies[0].rows || [])].map(r => [...r.cells].map(c => c.textContent.replace(/\s+/g, ' ').trim()));
    const net = document.getElementById('net');
    return {
      corners: cells(document.getElementById('corners')), edges: cells(document.getElementById('edges')),
      net: net.getAttribute('d').split('z')[0], unit: +net.dataset.unitMm, left: +net.dataset.leftMm, top: +net.dataset.topMm,
      plies: [...document.querySelectorAll('.page.ply')].map(p => ({
        side: p.querySelector('.side').textContent, joints: cells(p.querySelector('table.joints')),
        strips: [...p.querySelectorAll('.strips label')].map(l => l.textContent.replace(/\s+/g, ' ').trim()),
      })),
    };
  });
  const tool = new Tool(read), out = [];
  plan.plies.forEach((ply, i) => {
    for (const d of differences(tool, read.plies[i], ply)) out.push(`ply ${ply.ply}: ${d}`);
  });
  return out;
}

// Tool is the edge of the part as the first page tells it.
class Tool {
  constructor(read) {
    this.corners = new Map(read.corners.map(([name, x, y]) => [name[0], [mm(x), mm(y)]]));
    this.edges = new Map(read.edges.map(([name, long, shape]) => [name, { long: mm(long), straight: shape === 'straight' }]));
    this.ring = read.net.split(/[ML]/).filter(Boolean).map(p => p.split(' ').map(Number)).map(([x, y]) => [read.left + read.unit * x, read.top - read.unit * y]);
    const area = this.ring.reduce((s, p, i) => s + p[0] * this.next(i)[1] - this.next(i)[0] * p[1], 0);
    if (area < 0) this.ring.reverse(); // anticlockwise
    this.steps = this.ring.map((p, i) => apart(p, this.next(i)));
    this.long = this.steps.reduce((s, l) => s + l, 0);
  }
  next(i) { return this.ring[(i + 1) % this.ring.length]; }
  // along is how far from the ring's first point the edge comes nearest to p.
  along(p) {
    let best = Infinity, at = 0, from = 0;
    this.ring.forEach((a, i) => {
      const b = this.next(i), l = this.steps[i];
      const f = Math.max(0, Math.min(1, ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / (l * l)));
      const d = apart(p, between(a, b, f));
      if (d < best) [best, at] = [d, from + f * l];
      from += l;
    });
    return at;
  }
  walk(from, way) {
    let at = (this.along(from) + way + 2 * this.long) % this.long;
    for (let i = 0; i < this.ring.length; i++) {
      if (at <= this.steps[i]) return between(this.ring[i], this.next(i), at / this.steps[i]);
      at -= this.steps[i];
    }
    return this.ring[0];
  }
  // place is where a distance in words ends.
  place(words) {
    const round = /^(.*) from ([A-Z]) (anticlockwise|clockwise)$/.exec(words);
    if (round) return this.walk(this.corners.get(round[2]), mm(round[1]) * (round[3] === 'clockwise' ? -1 : 1));
    const [, far, from, a, b] = /^(.*) from ([A-Z]), edge ([A-Z])\u2011([A-Z])$/.exec(words) || [];
    const edge = this.edges.get(a + '-' + b);
    if (!edge || from !== a && from !== b || !(mm(far) <= edge.long + 0.3)) return null;
    if (!edge.straight) return this.walk(this.corners.get(from), from === a ? mm(far) : -mm(far));
    const [p, q] = [this.corners.get(from), this.corners.get(from === a ? b : a)];
    return between(p, q, mm(far) / apart(p, q));
  }
}

const apart = (a, b) => Math.hypot(b[0] - a[0], b[1] - a[1]);
const between = (a, b, f) => [a[0] + f * (b[0] - a[0]), a[1] + f * (b[1] - a[1])];

function differences(tool, read, ply) {
  const out = [], down = ply.face === 'down';
  if (read.joints.length !== ply.joints.length) return [`${read.joints.length} joints on the page, ${ply.joints.length} in the plan`];
  if (!read.side.startsWith(down ? 'FACE DOWN ' : 'FACE UP ')) out.push('the page says ' + read.side);
  ply.strips.forEach((s, i) => {
    if (!(read.strips[i] || '').startsWith(`${s.id} lay ${down ? 'FACE DOWN' : 'face up'}, `)) out.push(`${s.id}: "${read.strips[i]}"`);
  });
  ply.joints.forEach((j, i) => {
    const [name, one, other] = read.joints[i];
    if (one.startsWith('in the trim')) return;
    const d = [(j.to[0] - j.from[0]), (j.to[1] - j.from[1])], l = Math.hypot(...d);
    const at = [one, other].map(words => {
      const p = tool.place(words);
      if (!p) return out.push(`${name}: "${words}" leads nowhere`), NaN;
      const [x, y] = [p[0] - j.from[0], p[1] - j.from[1]];
      const off = Math.abs(d[0] * y - d[1] * x) / l;
      if (!(off <= nearMM)) out.push(`${name}: "${words}" lies ${off.toFixed(2)} mm off the joint`);
      return d[0] * x + d[1] * y;
    });
    if (at[0] >= at[1]) out.push(`${name}: both ends on one side`);
  });
  return out;
}
