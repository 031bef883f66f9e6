using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Figures of joints and sections have one table of ranges, for the file and for whoever calls the library without one.</summary>
public class SectionFigureTests
{
    [Theory]
    [InlineData("joint.dowel_diameter", 0.1, 0.5)]
    [InlineData("joint.end_wall", 80, 50)]
    [InlineData("joint.plate_thickness", 0.15, 0.2)]
    [InlineData("sections.cut_clearance", -1, 0)]
    public void A_figure_that_no_file_could_state_is_told_at_its_key_with_the_nearest_that_could(string key, double value, double nearest)
    {
        var spec = key switch
        {
            "joint.dowel_diameter" => new SectionSpec { Joint = new() { DowelDiameter = value } },
            "joint.plate_thickness" => new SectionSpec { Joint = new() { PlateThickness = value } },
            "joint.end_wall" => new SectionSpec { Joint = new() { EndWall = value } },
            _ => new SectionSpec { CutClearance = value },
        };
        var finding = Assert.Single(SectionSpecKeys.Check(spec));
        Assert.Equal(("PF6050", key, Severity.Error), (finding.Code, finding.Key, finding.Severity));
        Assert.Equal(nearest, double.Parse(finding.Cure!.Value!.ToString()!, System.Globalization.CultureInfo.InvariantCulture));
        Assert.Empty(SectionSpecKeys.Check(new()));
    }
}
