using Xunit;
using Xunit.Abstractions;

[assembly: TestCollectionOrderer("PlatformForge.Tests.HeavyFirst", "PlatformForge.Tests")]

namespace PlatformForge.Tests;

/// <summary>Classes that take longest begin first: one that began last would leave a core idle until it ends. A test fails or passes in any order.</summary>
public sealed class HeavyFirst : ITestCollectionOrderer
{
    private static readonly string[] Heavy =
    [
        "GuideTests", "SimulatedSurveyTests", "FolderKillTests", "AdviceForAnyLayingTests", "TrueMotionProperties", "HonestyTests", "SurveyedProjectTests", "ThornhitheTests",
        "FirstFileTests", "JointedLinesTests", "FoundAgainstAsked", "CauseTests", "RunawayTests", "SectionalTrackTests", "SurveyFitTests", "GrossMisreadingTests", "SayingOfReadingsTests",
        "SessionLaws", "StockTests", "WriterTests", "ManyPointsTests", "ReadingAdviceTests", "BuildTests", "StreamedBuildTests",
    ];

    public IEnumerable<ITestCollection> OrderTestCollections(IEnumerable<ITestCollection> testCollections) => testCollections.OrderBy(Place);

    private static int Place(ITestCollection collection)
    {
        int place = Array.FindIndex(Heavy, name => collection.DisplayName.EndsWith('.' + name, StringComparison.Ordinal));
        return place < 0 ? Heavy.Length : place;
    }
}
