using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;

namespace PlatformForge.Tests.House;

/// <summary>
/// Small numbers, a hundred-thousandth and less, have a name each and stand once, with what they are a tolerance of; what two lengths may differ by and still
/// be the same is said once, in Units/Tolerances.
/// </summary>
public partial class SmallNumberTests
{
    private const double Small = 1e-5;

    // A billionth elsewhere than in Units/Tolerances, by file and name: none is a length of the layout.
    private static readonly Dictionary<string, string> Billionths = new(StringComparer.Ordinal)
    {
        ["Clearance/Sweeping/FormCorner.SquareSine"] = "sine of an angle",
        ["Exports/Drawings/Elevations/Walls/FacingJoints.NoArea"] = "area, mm²",
        ["Exports/Drawings/Painting/Mask.Flat"] = "pixels",
        ["Exports/LineArt/LinePicture.NoDot"] = "dots of a picture",
        ["Exports/Manifests/RigidTransformForm.Squareness"] = "rows of a motion that went through text",
        ["Exports/Pictures/Light/Raster.Level"] = "samples of a picture",
        ["Platforms/Surfaces/LeastGreatest.Nothing"] = "part of what is allowed",
        ["Sections/Beds/BedRoom.Parallel"] = "sine of an angle",
        ["Solids/Kernel/Lending/KernelLimits.VolumeAgreement"] = "part of a volume",
        ["Track/Surveys/Admissible/MiddleLine.LeastDecrement"] = "decrement of Newton's rule",
        ["Track/Surveys/AlignmentText.LeastStep"] = "least step of a search",
        ["Track/Surveys/Fitting/Lines/ColumnSpan.NormLeft"] = "part of a column's norm",
        ["Track/Surveys/Fitting/Lines/ExactFit.CurvatureStep"] = "curvature, 1/mm",
        ["Track/Surveys/Fitting/Lines/ExactFit.LeastGain"] = "part of a sum of squares",
    };

    private sealed record SmallNumber(string File, int Line, string Name, double Value)
    {
        public string Where => $"{File}.{Name}";

        public string Told => string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}: {Name} {Value:R}");
    }

    private static readonly Lazy<SmallNumber[]> All = new(() => [.. Read()]);

    [Fact]
    public void Every_small_number_has_a_name() => Assert.Empty(All.Value.Where(n => n.Name.Length == 0).Select(n => n.Told));

    [Fact]
    public void A_name_and_its_figure_are_declared_once() => Assert.Empty(
        from n in All.Value
        where n.Name.Length > 0
        group n by (n.Name, n.Value) into same
        where same.Select(n => n.File).Distinct().Count() > 1
        select string.Join(", ", same.Select(n => n.Told)));

    [Fact]
    public void A_billionth_of_a_millimetre_is_declared_once() => Assert.Equal(
        Billionths.Keys.Order(StringComparer.Ordinal),
        All.Value.Where(n => n.Value == 1e-9 && n.File != "Units/Tolerances").Select(n => n.Where).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("    private const double Sharper = 6, Settled = 1e-9, Close = 1e-5;", "Settled 1E-09, Close 1E-05")]
    [InlineData("    private static readonly Damping Damped = new(First: 1e-6, Least: 1e-7);", "First 1E-06, Least 1E-07")]
    [InlineData("    private const double LevelCosine = 1 - 1e-6;", "LevelCosine 1E-06")]
    [InlineData("        if (Math.Abs(cross) < 2.5e-12) // below 1e-9", " 2.5E-12")]
    [InlineData("    // errors under 1e-18", "")]
    public void Small_numbers_are_found_with_their_names(string line, string found) => Assert.Equal(found,
        string.Join(", ", In(line).Select(n => string.Create(CultureInfo.InvariantCulture, $"{n.Name} {n.Value:R}"))));

    private static IEnumerable<SmallNumber> Read() =>
        from file in Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src"), "*.cs", SearchOption.AllDirectories)
        let path = Path.GetRelativePath(Path.Combine(SourceTree.Root, "src"), file).Replace('\\', '/')
        where !path.Contains("/obj/", StringComparison.Ordinal)
        let name = path.Replace("PlatformForge/", "", StringComparison.Ordinal).Replace(".cs", "", StringComparison.Ordinal)
        from line in File.ReadLines(file).Select((text, i) => (Text: text, Number: i + 1))
        from n in In(line.Text)
        select new SmallNumber(name, line.Number, n.Name, n.Value);

    private static IEnumerable<(string Name, double Value)> In(string line) =>
        from Match m in Number().Matches(line.Split("//")[0])
        let value = double.Parse(m.Groups["value"].Value, CultureInfo.InvariantCulture)
        where value <= Small
        select (Declaration().IsMatch(line) ? m.Groups["name"].Value : "", value);

    [GeneratedRegex(@"^\s*(?:(?:public|internal|private) )?(?:const double|static readonly \w+) ")]
    private static partial Regex Declaration();

    [GeneratedRegex(@"(?:(?<name>\w+)(?: = |: )(?:1 - )?)?(?<![\w.])(?<value>\d+(?:\.\d+)?e-\d+)\b")]
    private static partial Regex Number();
}
