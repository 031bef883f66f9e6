using System.Globalization;
using PlatformForge.Clearance.Rules;
using Xunit;

namespace PlatformForge.Tests.Standards;

/// <summary>
/// The figures of the continental model standards as they are printed. NEM 103 (2016), page 2 of 2: a row for each radius, then the extra widths of
/// groups A, B, C of sizes Z to II, as far as the standard gives any. NEM 102 (2017): gauge, BL1 and BL2.
/// </summary>
public class ContinentalFigureTests
{
    private const string Nem103 = """
        175 2 3 5 4
        200 2 3 4 4
        225 2 2 4 3 5
        250 1 2 3 3 5 6 6
        275 1 2 3 3 4 6 5
        300 1 2 3 2 4 5 5 7
        325 1 1 2 2 3 5 4 6
        350 1 1 2 2 3 4 4 6 8 8
        400 0 1 2 1 2 4 3 5 7 7 11
        450 0 1 1 1 2 3 3 4 6 6 9 12 12
        500 0 0 1 1 1 3 2 4 5 5 8 11 10
        550 0 0 1 0 1 2 2 3 4 4 7 10 9 14
        600 0 0 1 0 1 2 1 3 4 4 6 9 8 13 17 19
        700 0 0 0 0 0 2 1 2 3 3 5 7 7 11 15 16
        800 0 0 0 0 0 1 0 2 3 3 4 6 6 9 13 14 22
        900 0 0 0 0 0 1 0 1 2 2 3 5 5 8 11 12 19 25 23
        1000 0 0 0 0 0 0 0 1 2 2 3 4 4 7 9 10 17 22 20 31
        1200 0 0 0 0 0 0 0 0 1 1 2 3 3 5 7 8 14 18 16 25 34 37
        1400 0 0 0 0 0 0 0 0 1 1 2 2 2 4 6 7 11 15 13 21 28 31
        1600 0 0 0 0 0 0 0 0 1 0 1 2 2 3 5 6 9 13 11 18 24 26 41
        1800 0 0 0 0 0 0 0 0 0 0 1 1 1 2 4 5 8 11 9 15 21 23 36 47
        2000 0 0 0 0 0 0 0 0 0 0 0 1 1 2 3 4 7 9 7 13 18 20 32 42
        2500 0 0 0 0 0 0 0 0 0 0 0 0 0 1 2 3 5 7 5 10 13 15 24 32
        3000 0 0 0 0 0 0 0 0 0 0 0 0 0 1 1 2 3 5 3 7 10 11 19 26
        3500 0 0 0 0 0 0 0 0 0 0 0 0 0 0 1 1 2 4 2 5 8 9 16 21
        4000 0 0 0 0 0 0 0 0 0 0 0 0 0 0 0 0 1 3 1 4 6 6 13 18
        """;

    [Fact]
    public void Extra_widths_are_those_printed()
    {
        string[] rows = Nem103.Split('\n');
        Assert.Equal(rows.Select(r => r.Split(' ')[0]), ContinentalTables.Radii.Select(r => r.ToString(CultureInfo.InvariantCulture)));
        Assert.All(rows, row =>
        {
            double?[] printed = [.. row.Split(' ').Select(n => (double?)double.Parse(n, CultureInfo.InvariantCulture))];
            double?[] held = [.. ContinentalTables.SizeNames.SelectMany(_ => Enum.GetValues<VehicleGroup>(),
                (s, g) => ContinentalTables.ExtraWidth(s, g, printed[0]!.Value))];
            Assert.Equal(printed[1..], held[..(printed.Length - 1)]);
            Assert.All(held[(printed.Length - 1)..].Append(null), e => Assert.Null(e));
        });
    }

    /// <summary>Scales of the sizes: NEM 010. The planning aid's heights are those of full size, to half a millimetre.</summary>
    [Theory]
    [InlineData("Z", 6.5, 20, 14, 220)]
    [InlineData("N", 9, 27, 18, 160)]
    [InlineData("TT", 12, 36, 24, 120)]
    [InlineData("H0", 16.5, 48, 32, 87)]
    [InlineData("S", 22.5, 66, 44, 64)]
    [InlineData("0", 32, 94, 63, 45)]
    [InlineData("I", 45, 130, 87, 32)]
    [InlineData("II", 64, 184, 124, 22.5)]
    public void Widths_are_those_printed_and_heights_those_of_full_size(string name, double gauge, double full, double low, double scale)
    {
        var size = ContinentalTables.Sizes[name];
        Assert.Equal((gauge, full, low), (size.Gauge, size.FullWidth, size.LowWidth));
        Assert.Equal(4, size.Heights.Count);
        Assert.All(new double[] { 960, 760, 550, 380 }.Zip(size.Heights), h => Assert.Equal(h.First / scale, h.Second, 0.5));
    }
}
