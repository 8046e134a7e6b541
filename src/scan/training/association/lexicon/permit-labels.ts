import type { PermitAsk } from '../../../../reading/asks.ts'

/**
 * How forms of different decades ask for the facts of a permit (common practice; abbreviations of the trade). One
 * spelling between bars; a `~` before one marks it as too common to be trusted alone.
 */
export const PERMIT_LABELS: Record<PermitAsk, string> = {
  number:
    'permit no|permit number|permit num|permit nr|permit #|permit id|~permit|sewage permit no|septic permit no|septic permit number|sewage permit number|health permit no|construction permit no|permit to construct no|permit to install no|installation permit no|disposal permit no|repair permit no|record no|record number|~file no|~file number|~certificate no|~no|~number|ssds permit no|osds permit no|owts permit no|ssts permit no',
  kind: 'type of permit|permit type|permit class|permit kind|permit category|type of work|work type|kind of work|nature of work|class of work|description of work|type of construction|construction type|type of application|application type|type of installation|installation type|application for|permit for|~permit to|~permission to|~work|~class|~purpose|~action|purpose of permit|reason for permit|~system type|~this permit is for',
  issuedOn:
    'date issued|issued|issue date|issued on|date of issue|date of issuance|issuance date|permit date|date of permit|permit issued|date permit issued|permit issue date|issued date|was issued on|was issued|issued this|permit issued on|~date|~dated',
  approvedOn:
    'date approved|approved|approved on|approval date|date of approval|final approval|final approval date|date of final approval|final|final date|finaled|date finaled|finaled on|final inspection|final inspection date|date of final inspection|final inspection approved|final inspection and approval|final insp|final insp date|inspected and approved|work inspected and approved|inspected and approved on|finally approved on|was finally approved|finally approved|approved for use|approved for cover|approved for backfill|date of inspection and approval|system approved|installation approved|installation approved on|certificate issued|as built approved|as built date|passed|passed on|~inspected|~inspection date|~date inspected|~date of inspection|~inspected on|~completed|~date completed|~completion date|~date of completion|~completed on|accepted|date accepted|accepted on',
  bedrooms:
    'bedrooms|bedroom|no of bedrooms|number of bedrooms|no bedrooms|# of bedrooms|# bedrooms|bedroom count|bdrms|bdrm|no of bdrms|br|brs|bed rooms|no bdrms|design bedrooms|max bedrooms|maximum bedrooms|total bedrooms|bedrooms served|number of br|no of br|<bedroom|<bedrooms|<bdrm|<bdrms|<br|<bed rooms|<bedroom home|<bedroom house|<bedroom dwelling|<bedroom residence|<bedroom single family dwelling',
  designFlowGpd:
    'design flow|daily flow|est flow|estimated flow|flow|design flow rate|flow rate|daily design flow|design daily flow|daily sewage flow|sewage flow|design sewage flow|estimated daily flow|est daily flow|peak flow|peak daily flow|flow gpd|daily flow gpd|design gpd|gallons per day|gals per day|gpd|design flow gpd|wastewater flow|total flow|total daily flow|avg daily flow',
  percRateMpi:
    'perc rate|percolation rate|perc|perc test|perc test result|perc test results|perc result|percolation test|percolation test result|percolation test results|percolation|perc mpi|mpi|design perc rate|average perc rate|avg perc rate|avg perc|average percolation rate|soil perc rate|perc time|stabilized rate|min per inch|minutes per inch|min per in|mins per inch|perc rate mpi|rate of percolation|soil absorption test',
  soilTexture:
    'soil|soil type|soil texture|soils|soil class|texture|soil description|type of soil|kind of soil|character of soil|nature of soil|soil texture class|soil classification|predominant soil|soil conditions|soil profile|soil group|soil at site',
  parcelNumber:
    'parcel|parcel no|parcel number|parcel num|parcel #|parcel id|parcel id no|parcel i d|tax parcel|tax parcel no|tax parcel number|tax parcel id|assessors parcel|assessors parcel no|assessors parcel number|assessor parcel no|assessor parcel number|assessors parcel number apn|assessor parcel number apn|apn|pin|pid|p i d|p i n|tax id|tax id no|tax lot|tax lot no|property id|property id no|parcel identification|parcel identification number|parcel identification no|tax map|tax map no|tax map number|map and parcel|map parcel|tax account no|tax account|assessors no|assessor no|parcel key|property number|tax no',
  address:
    'address|site address|property address|location|property location|job address|situs|situs address|street|street address|location of property|site location|premises|premises address|premises at|job location|job site|job site address|~site|project address|project location|address of property|address of site|location of site|location of system|location of job|location of premises|physical address|physical location|service address|installation address|property location street and number|street and number|road|installed at|located at|house no and street',
  cornerA:
    'corner a|point a|ref a|ref point a|ref pt a|reference a|reference point a|reference corner a|benchmark a|pt a|corner a is|corner a is the|location of corner a|location of point a|tie point a|station a',
  cornerB:
    'corner b|point b|ref b|ref point b|ref pt b|reference b|reference point b|reference corner b|benchmark b|pt b|corner b is|corner b is the|location of corner b|location of point b|tie point b|station b',
  baseline:
    'a to b|distance a to b|baseline|base line|baseline a b|baseline a to b|base line a b|distance from a to b|dist a to b|dist a b|distance a b|distance between corners|distance between a and b|between corners|from a to b|a to b is|a to b distance|corners are apart|the corners are|length of base line|baseline length|corner to corner|a b distance',
  remarks:
    'remarks|comments|notes|note|additional remarks|special conditions|additional comments|inspector remarks|inspectors remarks|inspector comments|inspection notes|general remarks',
}
