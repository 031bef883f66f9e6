using System.Text.RegularExpressions;
using Xunit;

namespace PlatformForge.Tests.House;

/// <summary>What two lengths may differ by and still be the same is said once, in Units/Tolerances.</summary>
public class SmallNumberTests
{
    // Of another kind: where a search ends, what is no angle, no square and no area.
    private static readonly string[] OtherKinds =
        ["LeastStep", "Settled", "NormLeft", "CurvatureStep", "VolumeAgreement", "Parallel", "SquareSine", "Squareness", "Flat", "Nothing"];

    [Fact]
    public void A_billionth_of_a_millimetre_is_declared_once() => Assert.Empty(
        from file in Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src"), "*.cs", SearchOption.AllDirectories)
        let path = Path.GetRelativePath(SourceTree.Root, file).Replace('\\', '/')
        where !path.Contains("/obj/", StringComparison.Ordinal) && !path.EndsWith("Units/Tolerances.cs", StringComparison.Ordinal)
        from Match declared in Regex.Matches(File.ReadAllText(file), @"(\w+) = 1e-9\b")
        where !OtherKinds.Contains(declared.Groups[1].Value)
        select $"{path}: {declared.Value}: is it Tolerances.Rounding?");
}
