using PriceFloor.Storage.Tests.Contract;

namespace PriceFloor.Storage.Tests.Waiting;

public sealed class WaitingConditionalWriteTests : ConditionalWriteContract<WaitingUnderTest>;

public sealed class WaitingKeyTests : KeyContract<WaitingUnderTest>;

public sealed class WaitingLimitTests : LimitContract<WaitingUnderTest>;

public sealed class WaitingLifeTests : LifeContract<WaitingUnderTest>;

public sealed class WaitingLogAppendTests : LogAppendContract<WaitingUnderTest>;

public sealed class WaitingLogReadingTests : LogReadingContract<WaitingUnderTest>;

public sealed class WaitingLogRowTests : LogRowContract<WaitingUnderTest>;

public sealed class WaitingLogWholeTests : LogWholeContract<WaitingUnderTest>;

public sealed class WaitingPageTests : PageContract<WaitingUnderTest>;

public sealed class WaitingPositionTests : PositionContract<WaitingUnderTest>;

public sealed class WaitingRevisionTests : RevisionContract<WaitingUnderTest>;

public sealed class WaitingSharedCommitTests : SharedCommitContract<WaitingUnderTest>;

public sealed class WaitingSharingTests : SharingContract<WaitingUnderTest>;

public sealed class WaitingTrailTests : TrailContract<WaitingUnderTest>;

public sealed class WaitingTransferTests : TransferContract<WaitingUnderTest>;
