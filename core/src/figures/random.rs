//! Random numbers that depend only on what they are for: a counter-based generator and the normal quantile.

/// Ten rounds of Philox with four 32-bit words: a keyed mixing of a counter.
///
/// Salmon, Moraes, Dror, Shaw: Parallel random numbers: as easy as 1, 2, 3, SC11, 2011 (from memory; the tests hold
/// the published known answers, also from memory, and a wrong constant could not reproduce them).
#[must_use]
pub fn philox(mut counter: [u32; 4], mut key: [u32; 2]) -> [u32; 4] {
    for round in 0..10 {
        if round > 0 {
            key = [key[0].wrapping_add(0x9E37_79B9), key[1].wrapping_add(0xBB67_AE85)];
        }
        let first = u64::from(counter[0]) * 0xD251_1F53;
        let second = u64::from(counter[2]) * 0xCD9E_8D57;
        counter = [
            (second >> 32) as u32 ^ counter[1] ^ key[0],
            second as u32,
            (first >> 32) as u32 ^ counter[3] ^ key[1],
            first as u32,
        ];
    }
    counter
}

/// Fowler, Noll and Vo's hash, variant 1a, 64 bits (from memory, tested against its published answers): a name as a
/// number that never changes.
#[must_use]
pub const fn name_hash(name: &str) -> u64 {
    let mut hash: u64 = 0xcbf2_9ce4_8422_2325;
    let bytes = name.as_bytes();
    let mut at = 0;
    while at < bytes.len() {
        hash = (hash ^ bytes[at] as u64).wrapping_mul(0x0000_0100_0000_01b3);
        at += 1;
    }
    hash
}

/// A number strictly between 0 and 1 that depends on the seed, the name and the draw, and on nothing else.
#[must_use]
pub fn uniform(seed: u64, name: u64, draw: u32) -> f64 {
    let words = philox(
        [draw, 0, name as u32, (name >> 32) as u32],
        [seed as u32, (seed >> 32) as u32],
    );
    let bits = u64::from(words[0]) << 32 | u64::from(words[1]);
    // 52 bits, each at the middle of its interval: never 0, never 1, no rounding.
    ((bits >> 12) as f64 + 0.5) / (1_u64 << 52) as f64
}

/// The standard normal value below which a share `p` of all values lies, for `0 < p < 1`; relative error about 1e-16.
///
/// Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37 (3), 1988 (from memory; the tests hold its published check
/// values).
#[must_use]
pub fn normal_quantile(p: f64) -> f64 {
    let from_middle = p - 0.5;
    if from_middle.abs() <= 0.425 {
        let r = 0.180_625 - from_middle * from_middle;
        return from_middle * ratio(r, &MIDDLE_ABOVE, &MIDDLE_BELOW);
    }
    let tail = if from_middle < 0.0 { p } else { 1.0 - p };
    let r = (-crate::number::ln(tail)).sqrt();
    let size = if r <= 5.0 {
        ratio(r - 1.6, &TAIL_ABOVE, &TAIL_BELOW)
    } else {
        ratio(r - 5.0, &FAR_ABOVE, &FAR_BELOW)
    };
    if from_middle < 0.0 { -size } else { size }
}

fn ratio(x: f64, above: &[f64; 8], below: &[f64; 8]) -> f64 {
    let polynomial = |terms: &[f64; 8]| terms.iter().rev().fold(0.0, |sum, term| sum * x + term);
    polynomial(above) / polynomial(below)
}

const MIDDLE_ABOVE: [f64; 8] = [
    3.387_132_872_796_366_5,
    1.331_416_678_917_843_8e2,
    1.971_590_950_306_551_3e3,
    1.373_169_376_550_946e4,
    4.592_195_393_154_987e4,
    6.726_577_092_700_87e4,
    3.343_057_558_358_813e4,
    2.509_080_928_730_122_7e3,
];
const MIDDLE_BELOW: [f64; 8] = [
    1.0,
    4.231_333_070_160_091e1,
    6.871_870_074_920_579e2,
    5.394_196_021_424_751e3,
    2.121_379_430_158_659_7e4,
    3.930_789_580_009_271e4,
    2.872_908_573_572_194_3e4,
    5.226_495_278_852_854e3,
];
const TAIL_ABOVE: [f64; 8] = [
    1.423_437_110_749_683_5,
    4.630_337_846_156_546,
    5.769_497_221_460_691,
    3.647_848_324_763_204_5,
    1.270_458_252_452_368_4,
    2.417_807_251_774_506e-1,
    2.272_384_498_926_918_4e-2,
    7.745_450_142_783_414e-4,
];
const TAIL_BELOW: [f64; 8] = [
    1.0,
    2.053_191_626_637_759,
    1.676_384_830_183_803_8,
    6.897_673_349_851e-1,
    1.481_039_764_274_800_8e-1,
    1.519_866_656_361_645_7e-2,
    5.475_938_084_995_345e-4,
    1.050_750_071_644_416_9e-9,
];
const FAR_ABOVE: [f64; 8] = [
    6.657_904_643_501_103,
    5.463_784_911_164_114,
    1.784_826_539_917_291_3,
    2.965_605_718_285_048_7e-1,
    2.653_218_952_657_612_4e-2,
    1.242_660_947_388_078_4e-3,
    2.711_555_568_743_487_6e-5,
    2.010_334_399_292_288_1e-7,
];
const FAR_BELOW: [f64; 8] = [
    1.0,
    5.998_322_065_558_88e-1,
    1.369_298_809_227_358e-1,
    1.487_536_129_085_061_5e-2,
    7.868_691_311_456_133e-4,
    1.846_318_317_510_054_8e-5,
    1.421_511_758_316_446e-7,
    2.044_263_103_389_939_8e-15,
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn philox_gives_the_published_known_answers() {
        // Known-answer table published with the generator, philox4x32 with 10 rounds; from memory.
        let cases = [
            ([0; 4], [0; 2], [0x6627_e8d5, 0xe169_c58d, 0xbc57_ac4c, 0x9b00_dbd8]),
            (
                [u32::MAX; 4],
                [u32::MAX; 2],
                [0x408f_276d, 0x41c8_3b0e, 0xa20b_c7c6, 0x6d54_51fd],
            ),
            (
                [0x243f_6a88, 0x85a3_08d3, 0x1319_8a2e, 0x0370_7344],
                [0xa409_3822, 0x299f_31d0],
                [0xd16c_fe09, 0x94fd_cceb, 0x5001_e420, 0x2412_6ea1],
            ),
        ];
        for (counter, key, expected) in cases {
            assert_eq!(philox(counter, key), expected);
        }
    }

    #[test]
    fn name_hashes_are_the_published_ones() {
        // Published answers of FNV-1a, 64 bits; from memory.
        assert_eq!(name_hash(""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(name_hash("a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(name_hash("foobar"), 0x8594_4171_f739_67e8);
    }

    #[test]
    fn normal_quantiles_are_the_published_ones() {
        // The first three are AS 241's own check values (from memory); all were compared with the inverse
        // of Python's statistics.NormalDist, 3.11.
        let cases = [
            (0.25, -0.674_489_750_196_081_7),
            (0.001, -3.090_232_306_167_813_5),
            (1e-20, -9.262_340_089_798_409),
            (0.9, 1.281_551_565_544_600_4),
            (0.975, 1.959_963_984_540_054),
        ];
        for (p, expected) in cases {
            let found = normal_quantile(p);
            assert!((found / expected - 1.0).abs() < 1e-14, "{p}: {found}");
        }
        assert!(normal_quantile(0.5).abs() < 1e-300);
    }

    #[test]
    fn uniform_numbers_are_spread_evenly() {
        let count = 20_000;
        let mut tenths = [0_u32; 10];
        let mut sum = 0.0;
        for draw in 0..count {
            let u = uniform(7, name_hash("spread"), draw);
            assert!(u > 0.0 && u < 1.0);
            tenths[(u * 10.0) as usize] += 1;
            sum += u;
        }
        // Five standard errors: 0.2887 / √20000 for the mean, √(20000 × 0.1 × 0.9) for a tenth.
        assert!((sum / f64::from(count) - 0.5).abs() < 0.0103);
        for tenth in tenths {
            assert!((f64::from(tenth) - 2_000.0).abs() < 213.0, "{tenths:?}");
        }
    }
}
