import type { Material, VesselShape } from '../../catalog/choices.ts'
import type { PermitKind } from '../../records/permit.ts'

/** Materials as papers write them (common practice; CI, VCP, ORG and the pipe marks are the trade's abbreviations). */
export const MATERIAL_SPELLINGS: Partial<Record<Material, string>> = {
  concrete:
    'concrete|conc|precast concrete|pre cast concrete|precast|reinforced concrete|poured concrete|poured in place concrete|prefab concrete|concr|cement|p c concrete|r c|pc conc|precast conc',
  'concrete-block':
    'concrete block|block|cement block|conc block|cinder block|concrete blocks|blocks|cmu|cinderblock|cement blocks|con block',
  brick: 'brick|bricks|brick masonry',
  stone: 'stone|fieldstone|field stone|dry laid stone|dry stone|stone masonry|rubble stone',
  steel:
    'steel|metal|coated steel|asphalt coated steel|bituminous coated steel|iron tank|galvanized steel|welded steel',
  fiberglass: 'fiberglass|fibreglass|fiber glass|frp|fibergls|fiberglas|f g',
  polyethylene:
    'polyethylene|poly|plastic|hdpe|polyethylene plastic|poly plastic|corrugated|corrugated plastic|p e|polyeth',
  wood: 'wood|redwood|wooden|timber|cedar',
  'cast-iron': 'cast iron|c i|ci|cast iron pipe|c i pipe|castiron|cip',
  'ductile-iron': 'ductile iron|d i pipe|dip|ductile',
  'vitrified-clay':
    'vitrified clay|clay|clay tile|vcp|vtp|vit clay|vitrified clay pipe|v c p|clay pipe|vitrified tile|tile|vitrified|drain tile|farm tile|tile pipe|vit tile|clay drain tile',
  'bituminized-fiber':
    'bituminized fiber|orangeburg|bituminous fiber|fiber pipe|fiber|fibre|fibre pipe|fiber conduit|orange burg|bituminized fibre|orgbg|b f pipe|bit fiber',
  'asbestos-cement': 'asbestos cement|transite|transite pipe|a c pipe|asbestos cem|acp|asbestos cement pipe',
  pvc: 'pvc|p v c|sch 40 pvc|pvc sch 40|sdr 35|sdr35|pvc sdr 35|d3034|d 3034|schedule 40|schedule 40 pvc|sch 40|sch40|perforated pvc|pvc d3034|pvc schedule 40|pvc sdr35|pvc pipe|sdr 35 pvc|astm d3034',
  abs: 'abs|a b s|abs pipe|abs plastic',
  gravel: 'washed gravel|gravel fill',
}

export const SHAPE_SPELLINGS: Partial<Record<VesselShape, string>> = {
  rectangular: 'rectangular|rect|rectangle|box shaped|square',
  'vertical-cylinder':
    'round|cylindrical|circular|vertical cylinder|upright cylinder|vertical cylindrical|cylinder vertical',
  'horizontal-cylinder': 'horizontal cylinder|horizontal cylindrical|cylinder horizontal|horizontal',
  sphere: 'sphere|spherical|bottle shaped',
}

export const WORK_SPELLINGS: Record<PermitKind, string> = {
  new: 'new|new installation|new construction|new system|new permit|installation|install|construct|construction permit|new sewage disposal system|a new sewage disposal system|initial installation|new septic system|first installation|new work|original installation|to construct|to install',
  repair:
    'repair|repairs|replacement|replace|repair or replacement|repair replacement|system repair|repair permit|rep|emergency repair|repair existing|repair of existing|replace existing|replacement system|remedial|correction of failure|repair of system|to repair',
  alteration:
    'alteration|alterations|alter|addition|expansion|modification|enlarge|enlargement|modify|extension|upgrade|addition alteration|alter existing|add to existing|alteration of existing|remodel|alteration or addition|additions|to alter|to enlarge|major alteration|minor alteration',
  abandonment:
    'abandonment|abandon|abandoned|abandonment of system|tank abandonment|decommission|decommissioning|closure|destroy|destruction|to abandon|system closure|removal',
}
