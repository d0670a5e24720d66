const lime = {
  freeCaO: { low: 0.85, typical: 0.9, high: 0.95 },
  bulkDensityLump: 850,
  bulkDensityGround: { low: 960, typical: 1100, high: 1200 },
  bulkDensityHydrate: { low: 480, typical: 490, high: 560 },
  puttyDensity: { low: 1300, typical: 1350, high: 1400 },
  particleDensityHydrate: 2240,
}
const sand = { bulkDensity: 1600, particleDensity: 2650 }
const fine = [
  [4.75, 100],
  [2.36, 100],
  [1.18, 95],
  [0.6, 80],
  [0.3, 40],
  [0.15, 10],
].map(([openingMm, passing]) => ({ openingMm, passing }))
const coarse = [
  [4.75, 100],
  [2.36, 85],
  [1.18, 55],
  [0.6, 30],
  [0.3, 10],
  [0.15, 2],
].map(([openingMm, passing]) => ({ openingMm, passing }))

const recipe = {
  ingredients: [
    { material: 'our-lime', role: 'lime', parts: { low: 1, high: 1 }, by: 'volume', state: 'lump-quicklime' },
    { material: 'our-sand', role: 'aggregate', parts: { low: 3, high: 3 }, by: 'volume', state: 'dry' },
  ],
  materials: {
    'our-lime': lime,
    'our-sand': { ...sand, bulkingPeak: 0.29, bulkingPeakMoisture: 0.05, saturationMoisture: 0.2 },
  },
}

/** One sensible body for each calculation, by the last part of its address. */
export const SUM_EXAMPLES: Readonly<Record<string, unknown>> = {
  'convert-lime': { amount: 25, unit: 'kg', state: 'lump-quicklime', lime },
  'slake-batch': { quicklimeKg: 25, freeCaO: 0.92, waterKg: 60, sandKg: 100, waterC: 12 },
  'find-proportions': recipe,
  'restate-recipe': { ...recipe, as: { limeState: 'putty', aggregate: 'damp', by: 'volume' } },
  'find-yield': recipe,
  'take-off': { work: { kind: 'volume', volumeL: 100 } },
  'compare-practice': { lime, sand: { ...sand, voids: 0.38 } },
  'compare-yields': { lime, sand, cement: { bulkDensity: 1440, particleDensity: 3150 } },
  'compare-plausible': {
    ingredients: [
      { material: 'lime', role: 'lime', parts: { low: 1, high: 1 }, by: 'volume', state: 'putty' },
      { material: 'earth', role: 'earth', parts: { low: 5, high: 5 }, by: 'volume', state: 'dry' },
    ],
    materials: { lime, earth: { ...sand, clayFraction: 0.12 } },
    family: 'earth-lime',
  },
  'bulking-from-jar': { dampMm: 200, floodedMm: 160 },
  'bulking-by-moisture': {
    moisturePercent: 5,
    peakPercent: { low: 24, typical: 29, high: 34 },
    peakMoisturePercent: 5,
    saturationPercent: 20,
  },
  'correct-moisture': { kg: 300, weighed: 'dry', moisturePercent: 6, absorptionPercent: 1 },
  'voids-from-water': { sandMl: 225, waterMl: 77 },
  'voids-from-densities': { bulkKgM3: 1600, particleKgM3: 2650 },
  'leanest-proportion': { voidsPercent: 33.3, pasteL: 1 },
  'grade-sand': {
    sieves: [
      [4.75, 0],
      [2.36, 10],
      [1.18, 65],
      [0.6, 125],
      [0.3, 190],
      [0.15, 70],
    ].map(([openingMm, retainedG]) => ({ openingMm, retainedG })),
    panG: 40,
    startG: 502,
    balanceG: 0.5,
  },
  'check-grading': { curve: fine, limits: 'astm-c144-natural' },
  'blend-sands': {
    sands: [
      { curve: fine, bulkDensityKgM3: 1450 },
      { curve: coarse, bulkDensityKgM3: 1600 },
    ],
    target: [
      { openingMm: 2.36, passing: 95 },
      { openingMm: 0.6, passing: 60 },
      { openingMm: 0.15, passing: 8 },
    ],
  },
  'blend-to-modulus': { fine: 1.6, coarse: 3, wanted: 2.2 },
  'analyse-sample': {
    sampleG: 20,
    aggregateG: 14.9,
    finesG: 0.7,
    fines: 'aggregate',
    balanceG: 0.01,
    calcareousShare: { low: 0, typical: 0.02, high: 0.05 },
    carbonation: { low: 0.8, typical: 0.95, high: 1 },
    otherSolubleShare: { low: 0, typical: 0.005, high: 0.02 },
    lime,
    aggregate: sand,
  },
  'nearest-proportions': {
    ratios: [{ state: 'putty', byVolume: { low: 1.6, typical: 1.9, high: 2.2 } }],
    rows: [
      { id: 'lean', state: 'putty', aggregatePerLime: 3 },
      { id: 'near', state: 'putty', aggregatePerLime: 2 },
    ],
  },
  'classify-lime': { sio2: 20, al2o3: 5, fe2o3: 2, cao: 65, mgo: 1.5 },
  'burn-stone': { clayInStone: { low: 8, typical: 10, high: 12 } },
  'check-certificate': { class: 'CL 90', results: { caoMgo: 93, co2: 3 } },
  carbonate: {
    kMmPerRootDay: { low: 0.2, typical: 0.35, high: 0.5 },
    depthMm: 25,
    faces: 1,
    ages: [28, 365],
  },
  'carbonation-coefficient': { depthMm: { low: 4, typical: 5, high: 7 }, days: 90 },
  'dry-earth': {
    thicknessMm: 30,
    densityKgM3: 1700,
    moistureAtStart: 0.22,
    moistureAtEnd: 0.03,
    lossKgM2Day: { low: 0.3, typical: 0.6, high: 1 },
    faces: 1,
  },
  'assess-frost': {
    dailyLowsC: [6, 4, null, 1, -2, 3],
    protectDays: { low: 7, typical: 14, high: 28 },
    coldLimitC: 5,
    marginK: 2,
  },
  'count-carbon': {
    mortarL: 1000,
    limes: [{ massKg: 200, caoShare: 0.92, fuelKgPerKg: 0.3, distanceKm: 120 }],
    others: [{ massKg: 1500, gateKgPerKg: 0.005, distanceKm: 20 }],
    transportKgPerTkm: 0.1,
    uptakeShare: { low: 0.8, typical: 0.86, high: 0.92 },
    kMmPerRootDay: 0.35,
    depthMm: 25,
    years: [1, 10, 100],
  },
  'compare-with-wall': {
    mortar: {
      measures: { compressiveStrength: { low: 0.5, typical: 1, high: 1.5 } },
      contents: ['air-lime'],
    },
    unit: { compressiveStrength: { low: 20, typical: 40, high: 60 } },
    oldMortar: {},
    wall: { conditions: ['damp'], salts: { nitrate: 0.2 } },
  },
  'read-jar': { sandMm: 60, siltMm: 25, clayMm: 15, markMm: 1 },
  'read-wet-sieve': { dryG: 500, gravelG: 40, sandG: 280, balanceG: 0.5 },
  'read-hydrometer': {
    massG: 50,
    finesPercent: 60,
    finesOnly: true,
    particleDensityKgM3: { low: 2600, typical: 2650, high: 2750 },
    blankGL: 2,
    meniscusGL: 0.5,
    readings: [
      { minutes: 1, readingGL: 40, celsius: 20 },
      { minutes: 60, readingGL: 22, celsius: 20 },
      { minutes: 1440, readingGL: 14, celsius: 21 },
    ],
    readingErrorGL: 0.5,
  },
  'amend-soil': {
    clayPercent: { low: 20, typical: 25, high: 30 },
    additionClayPercent: { low: 0, typical: 1, high: 3 },
    targetClayPercent: 12,
    soilDensityKgM3: 1250,
    additionDensityKgM3: 1600,
  },
  'read-shrinkage': {
    boxMm: 600,
    bars: [
      { additionPerSoil: 0, gapMm: 30 },
      { additionPerSoil: 1, gapMm: 12 },
      { additionPerSoil: 2, gapMm: 5 },
    ],
    markMm: 1,
    allowedPercent: 1.5,
  },
  'lime-on-soil': {
    soilL: 500,
    soilDensityKgM3: { low: 1200, typical: 1250, high: 1300 },
    percent: 20,
    by: 'volume',
    state: 'dry-hydrate',
    lime,
    fibreKgM3: 15,
    fibreDensityKgM3: 60,
  },
}
