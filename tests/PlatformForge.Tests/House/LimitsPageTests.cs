using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.House;

/// <summary>The page of limits lists every limit as the readers have it.</summary>
public class LimitsPageTests
{
    [Fact]
    public void The_page_has_the_table_that_the_readers_go_by()
    {
        string page = File.ReadAllText(Path.Combine(SourceTree.Root, "docs", "limits.md")).ReplaceLineEndings("\n");
        string table = string.Concat(InputLimits.All.Select(row => $"| {row.What} | {row.Of} | {row.Limit} |\n"));
        Assert.True(page.Contains(table, StringComparison.Ordinal), "docs/limits.md should have this table:\n" + table);
    }
}
