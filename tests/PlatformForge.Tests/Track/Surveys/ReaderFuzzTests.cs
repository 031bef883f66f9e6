using PlatformForge.Tests.Projects.Remedies;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>Spoilt files end in a result or in a clean fault, never in an exception.</summary>
public class ReaderFuzzTests
{
    private const int Rounds = 1500;

    private const string Svg = "<svg width='400mm' height='200mm' viewBox='0 0 400 200'><g transform='translate(1,2) rotate(3)'>"
        + "<path id='b' d='M0 0h10v5l5 5c1 2 3 4 5 6s1 2 3 4q5 5 6 7t8 9a50 60 20 0 1 30 40z'/><polyline id='up' points='1,2 30,4 50,6'/></g><line "
        + "id='calibration' x1='0' y1='0' x2='9' y2='0'/></svg>";

    private const string Dxf = "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nLINE\n8\nup\n10\n0\n20\n0\n11\n90\n21\n0\n"
        + "0\nARC\n8\na\n10\n0\n20\n0\n40\n100\n50\n0\n51\n90\n0\nLWPOLYLINE\n8\na\n90\n2\n70\n1\n10\n1\n20\n2\n42\n0.4\n10\n5\n20\n6\n"
        + "0\nPOLYLINE\n8\nb\n70\n0\n0\nVERTEX\n10\n1\n20\n2\n0\nVERTEX\n10\n3\n20\n4\n0\nSEQEND\n"
        + "0\nELLIPSE\n10\n0\n20\n0\n11\n9\n21\n1\n40\n0.5\n41\n0\n42\n3\n"
        + "0\nSPLINE\n71\n2\n40\n0\n40\n0\n40\n0\n40\n1\n40\n1\n40\n1\n10\n1\n20\n0\n10\n1\n20\n1\n10\n0\n20\n1\n0\nENDSEC\n0\nEOF\n";

    public static TheoryData<string, string> Seeds() => new()
    {
        { "points", "# c\nx (mm);y\n0;0\n100;0,5\n200;1\n300;4\n400;9\n" },
        { "offsets", "distance,offset,side\n0,0,left\n100,0.5,\n200,1,\n300,4,r\n400,9,\n" },
        { "versines", "station\tversine\n100\t1\n200\t2\n300\t3\n400\t2\n500\t1\n" },
        { "svg", Svg },
        { "dxf", Dxf },
    };

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_spoilt_file_ends_in_a_result_or_a_clean_fault(string kind, string seed)
    {
        var random = new Random(kind.Length);
        int read = 0, refused = 0;
        for (int round = 0; round < Rounds; round++)
        {
            string text = Spoil(seed, random);
            var outcome = SurveyReader.Read(Spec(kind, text));
            Assert.Empty(outcome.Findings.SelectMany(f => Sentences.Complaints(f, text)));
            if (outcome.Succeeded)
            {
                read++;
            }
            else
            {
                Assert.All(outcome.Findings, f => Assert.False(string.IsNullOrEmpty(f.Message)));
                Assert.Contains(outcome.Findings, f => f.Severity == Severity.Error);
                refused++;
            }
        }

        Assert.True(read > 0 && refused > 0, $"{read} read, {refused} refused");
    }

    /// <summary>A row that is refused is refused once: no second fault is told of figures that it does not have.</summary>
    [Theory]
    [InlineData("300;4;5", "PF2104")]
    [InlineData("300", "PF2104")]
    [InlineData(";4", "PF2103")]
    [InlineData("many;4", "PF2103")]
    [InlineData("99999999999;4", "PF2103")]
    public void A_row_that_is_refused_has_one_fault(string row, string code)
    {
        string text = $"distance;offset\n0;0\n100;1\n200;2\n{row}\n400;9\n500;12\n";
        foreach (var spec in new[] { Spec("offsets", text),
            Spec("versines", text.Replace("distance;offset\n0;0", "station;versine\n50;0", StringComparison.Ordinal)),
            Spec("points", text.Replace("distance;offset", "x;y", StringComparison.Ordinal)) })
        {
            Assert.Equal([code], SurveyReader.Read(spec).Findings.Where(f => f.Severity == Severity.Error).Select(f => f.Code).Distinct());
        }
    }

    private static SurveySpec Spec(string kind, string text) => kind switch
    {
        "points" => Samples.Points(text),
        "offsets" => Samples.Offsets(text),
        "versines" => Samples.Versines(text, new(50, 500, 440)),
        "svg" => Samples.Drawing(text, DrawingFormat.Svg, "up", LengthUnit.Millimetre),
        _ => Samples.Drawing(text, DrawingFormat.Dxf, "up", LengthUnit.Millimetre),
    };

    private static string Spoil(string seed, Random random)
    {
        const string alphabet = "0123456789.,;-+eE \t\n<>\"'=/#MLzaAcC\0\uFFFD\u2212(){}[]&";
        var text = new System.Text.StringBuilder(seed);
        for (int n = random.Next(1, 5); n > 0 && text.Length > 0; n--)
        {
            int at = random.Next(text.Length), length = Math.Min(random.Next(1, 12), text.Length - at);
            switch (random.Next(5))
            {
                case 0:
                    text.Remove(at, length);
                    break;
                case 1:
                    text.Insert(at, alphabet[random.Next(alphabet.Length)]);
                    break;
                case 2:
                    text[at] = alphabet[random.Next(alphabet.Length)];
                    break;
                case 3:
                    text.Insert(random.Next(text.Length), text.ToString(at, length));
                    break;
                default:
                    text.Insert(at, new string('9', random.Next(1, 20)));
                    break;
            }
        }

        return text.ToString();
    }
}
