import { readDemo, assetsOf } from './contract/plan-of';
import { engine } from '../src/engine/api';
for (const d of ['lanterns-word.json','lantern-emblem.json']) for (let k=0;k<2;k++) {
const p = readDemo(d); const a = assetsOf(p);
let t = performance.now(); let last='';
const r = engine.makePlan(p, a, (s) => { const n = performance.now(); if (last) console.log(d, last, ((n-t)/1000).toFixed(2)); last = s; t = n; });
console.log(last, ((performance.now()-t)/1000).toFixed(2), r.problems.map(x=>x.code+' '+x.what.slice(0,100)));
}
