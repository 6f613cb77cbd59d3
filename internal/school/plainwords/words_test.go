package plainwords

// spokenWords are words of a class garden with their syllables.
// source: The Carnegie Mellon University Pronouncing Dictionary, version 0.7a
// (stressed vowels of the first pronunciation counted).
const spokenWords = `
1: air bleach brown choose curled day days draw floor gram graph group grow grown hands hole holes
1: inch jug lamp leaf leaves lid light line names ounce plant plants pour poured pump quart read
1: rinse root roots seed seeds spill spilled square stone strip strips taste touch tub twice wait
1: wash week weeks weight write
2: acid adult adults after again always answer basil because before between bottle bubble bubbles
2: careful carried carries circle color compare cover covered create degree degrees drawing finished
2: fraction gallon gently growing harvest healthy hour hours inches kitchen label labelled lettuce
2: level lifting liquid liter logbook measure measured meter middle minute minutes never notice
2: number numbers observe paper partner pencil people percent predict pupil question quickly reading
2: rotate ruler science seedling shadow shorter slowly station stations table taller tallest teacher
2: total towel volume water weekend wilted written yellow
3: allergy area average calendar carefully decimal difference different electric estimate every
3: everyone example holiday idea kilogram nutrient nutrients oxygen prediction quantity radius ratio
3: rectangle scientist slippery solution temperature together triangle yellowing
4: centimeter experiment material millimeter observation usually
`
