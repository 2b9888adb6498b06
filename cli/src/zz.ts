const t0=performance.now(); const c0=process.cpuUsage();
const { readPlan } = await import('@bloomrail/engine/line/plan');
const { runLine, runWholeLine } = await import('@bloomrail/engine/line/run-line');
const fs = await import('node:fs');
const t1=performance.now();
const r = readPlan(JSON.parse(fs.readFileSync('examples/60e1-heavy-rail/plan.json','utf8')));
if(!r.ok) throw r.issues;
const t2=performance.now();
let last=performance.now(); const L:string[]=[];
const line=runLine(r.plan); let s=line.next(); for(;!s.done;s=line.next()){const n=performance.now();L.push(s.value.code+' '+(n-last).toFixed(0));last=n;}
const cpu=process.cpuUsage(c0);
console.log('import',(t1-t0).toFixed(0),'read',(t2-t1).toFixed(0),'first',(performance.now()-t2).toFixed(0),'cpu total', ((cpu.user+cpu.system)/1e3).toFixed(0), L.join(' | '));
if(!s.value.ok) throw s.value.failure;
const mem=s.value.value.memory;
for(let k=0;k<4;k++){const a=performance.now(); const w=runWholeLine(r.plan); console.log('warm full',(performance.now()-a).toFixed(0));}
const f=JSON.parse(fs.readFileSync('examples/60e1-heavy-rail/plan.json','utf8'));
for(const i of [0,7,12,16,17]){ f.settings.passes[i].gapMm+=0.2; const q=readPlan(f); if(!q.ok) throw q; let a=performance.now(); const g=runLine(q.plan,mem); let first=0, uf=0; let st=g.next(); for(;!st.done;st=g.next()){ if(st.value.code===q.plan.settings.passes[i].code) first=performance.now()-a; if(st.value.code==='UF') uf=performance.now()-a;} console.log('change pass',i,'own answer',first.toFixed(1),'UF',uf.toFixed(1),'all',(performance.now()-a).toFixed(0)); f.settings.passes[i].gapMm-=0.2;}
