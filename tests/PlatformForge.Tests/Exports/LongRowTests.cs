using PlatformForge.Exports.ThreeMf;
using Xunit;

namespace PlatformForge.Tests.Exports;

public class LongRowTests
{
    // The file of all plates lays them side by side: the last of a long platform stands farther off than any mesh is large.
    [Theory]
    [InlineData(9_900, true)]
    [InlineData(12_000, true)]
    [InlineData(999_999, true)]
    [InlineData(1_000_001, false)]
    public void A_plate_far_along_the_row_is_read_back(double along, bool read)
    {
        string item = FormattableString.Invariant($"<item objectid=\"1\" transform=\"1 0 0 0 1 0 0 0 1 {along} 0 0\"/>");
        var outcome = ThreeMfReader.Read(HandPackage.With(HandPackage.Model(HandPackage.Tetrahedron, item)), "all.3mf");
        Assert.Equal(read, outcome.Succeeded);
        Assert.Equal(read ? along : null, outcome.Value?.Items[0].Placement.Shift.X);
    }
}
