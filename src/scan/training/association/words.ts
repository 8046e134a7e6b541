/** Words that papers of the trade are filled with, all of them common practice or made up; no name is anybody's. */
export const STREETS =
  'Heron Hollow|Sumac|Old Kiln|Tannery|Quarry Ridge|Gristmill|Bittern|Sedge Pond|Maple|County|River|North Shore|Mill|Church|Depot|Hickory|Cedar Swamp|Lake|Schoolhouse|Ferry|Alder|Fox|Meadow|Pine|Ridge|Hemlock|Orchard|Stage|Turnpike|Bay View|Town Hall|Creamery|Sawmill|Stone Bridge|Quail|Cold Spring'
export const STREET_KINDS =
  'Rd|Road|Rd.|St|Street|St.|Ln|Lane|Ave|Ave.|Avenue|Dr|Drive|Ct|Way|Trail|Hwy|Pike|Cir|Blvd|Place|Pl|Ter|Loop'
export const FAMILY_NAMES =
  'Abel|Brandt|Coates|Dorn|Ellwood|Farrow|Garrick|Hobart|Ives|Janner|Kessel|Lorne|Marsh|Norwood|Orr|Pell|Quist|Rask|Sorley|Tolland|Udall|Varner|Wick|Yarrow|Zell|Bloom|Carver|Dale|Eddy|Fenn'
export const GIVEN_NAMES =
  'J.|R. L.|Mary|Carl|H.|Ruth|Wm.|Geo.|A. B.|Ella|Frank|Lee|Tom|Anna|D.|Chas.|E. M.|Paul|Walt|Ida'
export const FIRMS =
  'Brindle Creek Excavating|Two Ponds Septic|Larch Hill Contractors|Stony Ford Digging|Ridge Septic Service|Valley Backhoe|Lowland Sanitation|North End Excavating|Sandpit & Sons|Tri-Lakes Plumbing|Self|Owner|same|Quarry Bros.|Eddy & Son|Marsh Excav.'
export const SOILS =
  'sandy loam|loam|silt loam|fine sand|clay loam|gravelly loam|sand|clay|loamy sand|silty clay|sand & gravel|coarse sand|gravel|heavy clay|sandy clay loam|silty clay loam|very fine sandy loam|sandy|loamy|hardpan|red clay'
export const TOWNS = 'Quillback|Tamarack|Fallow|Eastwold|Granby Flats|Ashford|Linden|Northfork|Weir|Harrow'

export const HEADINGS =
  'QUILLBACK COUNTY HEALTH DEPARTMENT|SEWAGE DISPOSAL PERMIT|APPLICATION FOR PERMIT|INDIVIDUAL SEWAGE DISPOSAL SYSTEM|SEPTIC SYSTEM RECORD|PRIVATE SEWAGE SYSTEM|AS-BUILT RECORD|INSPECTION REPORT|DIVISION OF SANITATION|ENVIRONMENTAL HEALTH SERVICES|ON-SITE WASTEWATER|CERTIFICATE OF COMPLETION|FINAL INSPECTION|County Board of Health|Department of Public Works|Permit to Install|Record of Installation|State Plumbing Code|FIELD NOTES|Plot Plan|Sewage Disposal Card'
export const SECTIONS =
  'PROPERTY|OWNER|GENERAL|SITE DATA|SYSTEM|DESIGN DATA|INSTALLATION|INSPECTION|DISPOSAL SYSTEM|SOIL DATA|LOCATION|For office use only|DO NOT WRITE BELOW THIS LINE|PART A|PART B|Section 1|Section II|DETAILS|APPROVAL|FINAL'
export const BOILERPLATE = [
  'The undersigned agrees to install the system in accordance with the rules of the department.',
  'No part of the system shall be covered until inspected and approved.',
  'Minimum distance from well to tank 50 feet and to field 100 feet.',
  'This permit expires one year from date of issue unless work has begun.',
  'Tanks shall be not less than 750 gallons for two bedrooms or less and 1000 gallons for three.',
  'Call 24 hours before backfilling for inspection.',
  'Approval does not guarantee that the system will function.',
  'Each trench shall be at least 24 inches wide and not more than 100 feet long.',
  'Show location of well, house, tank and field on sketch below.',
  'I hereby certify that the above is correct to the best of my knowledge.',
  'Keep this record with your deed. Have the tank pumped every 3 to 5 years.',
  'White copy: office. Yellow copy: owner. Pink copy: installer.',
  'Fill in with typewriter or print in ink.',
  'Sketch not to scale.',
  'Perforated pipe 4 inch diameter shall be laid level on 12 inches of washed stone.',
  'Distribution piping to be tight jointed within 10 ft of the box.',
]
export const NOTHINGS =
  'N/A|n/a|NA|none|None|NONE|-|--|---|not applicable|0|unk.|unknown|?|nil|not known|______|__|not used'
export const REMARKS =
  'Backfilled same day|OK to cover|Good job|System working at time of inspection|Owner to add soil cover|Cover with straw|Area seeded|Rock encountered at lower end|Old system abandoned in place|See sketch|Roots in old line|Needs riser to grade|Ditch water diverted|Install per sketch on back|Lines follow contour'
/** Distractors: labels and what stands beside them. */
export const ASIDE: readonly (readonly [labels: string, values: string])[] = [
  ['Fee|Permit fee|Fee paid|Amount|Amount paid', '$5.00|$25.00|$150|10.00|$75.00 pd'],
  ['Receipt no.|Receipt|Rec. No.', '4471|102|8830|A-221'],
  ['Lot|Lot no.|Lot No', '12|7|114|3A|21-22'],
  ['Block|Blk', '2|B|14'],
  ['Subdivision|Plat|Subd.', 'Heron Acres|Cedar Shores 2nd Add.|Lake View Plat|unplatted'],
  ['Section|Sec.|Sec', '14|7|32'],
  ['Twp|Township|Town|T.', '22N|4N|Tamarack|Fallow|T31N'],
  ['Range|R.|Rge', '5E|12W|R7W'],
  ['Lot size|Area of lot|Lot area|Acreage', "100' x 150'|2.5 ac|1/2 acre|75 x 140|20,000 sq ft|5 acres"],
  ['Phone|Telephone|Tel. no.', '555-0142|555-0117|(555) 555-0188'],
  ['Well depth|Depth of well|Well', "85 ft|120'|210 ft.|drilled 140'"],
  ['Well to tank|Distance well to tank|From well to septic tank', "55'|60 ft|75|52 ft."],
  ['Well to field|Distance to well|Dist. from well to absorption area', "110'|100 ft|125|over 100'"],
  ['Tank to foundation|Distance tank to house|From dwelling', "10'|12 ft|15"],
  ['Distance to property line|To lot line|Lot line', "10'|25 ft|15'|20"],
  ['Water supply|Source of water|Water', 'well|private well|public|drilled|spring|city'],
  ['Garbage disposal|Garbage grinder|Grinder', 'no|yes|No|none'],
  ['Bathrooms|No. of baths|Baths', '1|2|1 1/2|2.5'],
  ['Occupants|No. of persons|Persons', '4|5|2|3'],
  ['Type of building|Building|Use', 'dwelling|residence|single family|cottage|house|mobile home'],
  ['Depth to groundwater|Water table|Ground water at', '6\'|8 ft|over 6 ft|72 in|none seen|48"'],
  ['Depth to rock|Bedrock|Ledge', "over 6'|none|5 ft|60 in"],
  ['Slope|% slope|Ground slope', '5%|3 %|8|2 to 5 %|flat'],
  ['Spacing of trenches|Trench spacing|Lines on centers', "6'|8 ft|10 ft o.c.|6 ft."],
  ['Fall per foot|Pitch of line|Grade of line', '1/4"|1/8 in|4" in 100\''],
  ['Trench depth|Depth of trench|Total depth of trench|Excavated depth', '30"|36 in|3 ft|24"|42 in.'],
  ['Year built|House built', '1948|1962|1971'],
  ['Page|Sheet|Page no.', '1|2 of 3|1 of 2|14'],
  ['Book|Vol.|Volume', '12|3|7'],
  ['Inspector|Inspected by|Approved by|Sanitarian|Signed', 'R. Pell|H. Orr|D. Wick|J.M.|K. Dorn, R.S.'],
  ['License no.|Lic. No.|Registration', '114|S-2231|0077|MP 804'],
  ['Zone|Zoning|District', 'R-1|A|2|RR-5'],
  ['Manufacturer|Make|Tank made by', 'local|precast co.|Valley Vault|unknown'],
  ['Pump|Pump size|Pump make', '1/2 hp|1/3 HP|none|4/10 hp'],
  ['Holes|Test holes|No. of holes', '3|2|4'],
  [
    'Mailing address|Owner address|Address of owner',
    '44 Depot St, Weir|P.O. Box 71, Fallow|R.D. 2, Linden|Star Route, Harrow',
  ],
  ['Soil cover|Fill|Loam cover', 'yes|none|see plan'],
  ['Number of outlets|Outlets|Holes in box', '4|5|3|6'],
  ['Elevation|Bench mark|Invert elev.', '100.00|98.42|96.7|101.15'],
  ['Curtain drain|Footing drain', 'none|no|yes, 60 ft'],
  [
    'Distribution piping|Distribution pipe|Perforated pipe|Leaching pipe',
    '4" perf.|4 in PVC|4" tile|corrugated|4" P.V.C.',
  ],
  ['Loading|Soil rating|Sq ft per bedroom', '200|0.6|330|250 sq ft'],
  ['Area required|Required area|Min. area required|Sq. ft. required', '660 sq ft|750|900 sq. ft.|480'],
  ['Minimum tank size|Capacity required|Required capacity', '750 gal|1000|900 gal.'],
  ['Grease trap|Grease interceptor', 'none|no|N/A'],
]
/** Labels of what is told so as to be left alone. */
export const OWNER_LABELS =
  "Owner|Name|Owner of property|Property owner|Applicant|Name of owner|OWNER NAME|Issued to|Owner/applicant|For|Permittee|Owner's name|Builder"
export const INSTALLER_LABELS =
  'Installer|Contractor|Installed by|Put in by|Name of installer|Septic contractor|Excavator|Plumber|Work done by|Inst.|Instld by|Contr.'
export const INSTALLED_ON =
  'Date installed|Installed|Installation date|Installed on|Date of installation|Date completed|Completed|Put in|Constructed|Built|Inst.'
export const OTHER_DATES =
  'Application date|Date of application|Date received|Received|Applied|Perc test date|Date of test|Tested|Expires|Expiration date|Printed|Run date|Date of birth|Revised|Rev.|Date pumped|Fee paid on|Filed|Entered|Perc. done|Renewal|Valid until'
export const OTHER_NUMBERS =
  'Application no.|Appl. No.|Form|File no.|Receipt No.|Case no.|License|Building permit no.|Well permit no.|Account'
