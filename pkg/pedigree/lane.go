package pedigree

// lanes is how many pivots a sweep takes at once: their numbers fill two lines of
// the processor's cache.
const lanes = 16

// lane has one number for each pivot. The steps that most time goes into are
// written out.
type lane [lanes]float64

// upHalf adds half to sire and to dam.
func (v *lane) upHalf(sire, dam *lane) {
	x0 := v[0] / 2
	x1 := v[1] / 2
	x2 := v[2] / 2
	x3 := v[3] / 2
	sire[0] += x0
	sire[1] += x1
	sire[2] += x2
	sire[3] += x3
	dam[0] += x0
	dam[1] += x1
	dam[2] += x2
	dam[3] += x3
	x4 := v[4] / 2
	x5 := v[5] / 2
	x6 := v[6] / 2
	x7 := v[7] / 2
	sire[4] += x4
	sire[5] += x5
	sire[6] += x6
	sire[7] += x7
	dam[4] += x4
	dam[5] += x5
	dam[6] += x6
	dam[7] += x7
	x8 := v[8] / 2
	x9 := v[9] / 2
	x10 := v[10] / 2
	x11 := v[11] / 2
	sire[8] += x8
	sire[9] += x9
	sire[10] += x10
	sire[11] += x11
	dam[8] += x8
	dam[9] += x9
	dam[10] += x10
	dam[11] += x11
	x12 := v[12] / 2
	x13 := v[13] / 2
	x14 := v[14] / 2
	x15 := v[15] / 2
	sire[12] += x12
	sire[13] += x13
	sire[14] += x14
	sire[15] += x15
	dam[12] += x12
	dam[13] += x13
	dam[14] += x14
	dam[15] += x15
}

// downMean scales by own and adds the mean of sire and dam.
func (v *lane) downMean(own float64, sire, dam *lane) {
	v[0] = own*v[0] + (sire[0]+dam[0])/2
	v[1] = own*v[1] + (sire[1]+dam[1])/2
	v[2] = own*v[2] + (sire[2]+dam[2])/2
	v[3] = own*v[3] + (sire[3]+dam[3])/2
	v[4] = own*v[4] + (sire[4]+dam[4])/2
	v[5] = own*v[5] + (sire[5]+dam[5])/2
	v[6] = own*v[6] + (sire[6]+dam[6])/2
	v[7] = own*v[7] + (sire[7]+dam[7])/2
	v[8] = own*v[8] + (sire[8]+dam[8])/2
	v[9] = own*v[9] + (sire[9]+dam[9])/2
	v[10] = own*v[10] + (sire[10]+dam[10])/2
	v[11] = own*v[11] + (sire[11]+dam[11])/2
	v[12] = own*v[12] + (sire[12]+dam[12])/2
	v[13] = own*v[13] + (sire[13]+dam[13])/2
	v[14] = own*v[14] + (sire[14]+dam[14])/2
	v[15] = own*v[15] + (sire[15]+dam[15])/2
}

// add adds from, weighted.
func (v *lane) add(weight float64, from *lane) {
	for l := range v {
		v[l] += weight * from[l]
	}
}

func (v *lane) scale(by float64) {
	for l := range v {
		v[l] *= by
	}
}
