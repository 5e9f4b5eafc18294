<?xml version="1.0" encoding="UTF-8"?>
<!-- The crew brief: for someone who was not at the survey. Big type, no abbreviations. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <xsl:template match="plan" mode="brief">
    <div class="blanks who">
      <xsl:call-template name="blanks"><xsl:with-param name="labels" select="'Plan made by, telephone|Licensed electrician, telephone|Crew, how many|Start, site address'"/></xsl:call-template>
    </div>

    <section class="said">
      <xsl:element name="{$h2}">What we are building</xsl:element>
      <xsl:for-each select="papers/said/sentence">
        <p>
          <xsl:if test="@strong"><xsl:value-of select="@lead"/><xsl:text> </xsl:text><strong><xsl:value-of select="@strong"/></strong><xsl:text> </xsl:text></xsl:if>
          <xsl:value-of select="."/>
        </p>
      </xsl:for-each>
    </section>

    <section class="ends">
      <xsl:element name="{$h2}">The two ends</xsl:element>
      <xsl:for-each select="papers/ends/run">
        <div class="run-ends">
          <xsl:element name="{$h3}">
            <xsl:value-of select="@name"/><xsl:text>: </xsl:text><xsl:value-of select="@cable"/>
          </xsl:element>
          <xsl:if test="@protective"><p><xsl:text>Earth: </xsl:text><xsl:value-of select="@protective"/><xsl:text>.</xsl:text></p></xsl:if>
          <div class="pair">
            <xsl:for-each select="end">
              <div class="end">
                <p class="which"><xsl:value-of select="@which"/></p>
                <xsl:for-each select="joined">
                  <p class="joined"><xsl:value-of select="@what"/><xsl:text> </xsl:text><strong><xsl:value-of select="@state"/></strong></p>
                  <p><xsl:value-of select="."/></p>
                </xsl:for-each>
                <p>
                  <xsl:text>Into </xsl:text><xsl:value-of select="@into"/><xsl:text>; </xsl:text><xsl:value-of select="@place"/>
                  <xsl:text>. Leave a tail of </xsl:text><xsl:value-of select="@tail"/>
                  <xsl:if test="@loop"><xsl:text> and a drip loop of </xsl:text><xsl:value-of select="@loop"/></xsl:if>
                  <xsl:text>.</xsl:text>
                  <xsl:if test="@room"><xsl:text> </xsl:text><xsl:value-of select="@room"/></xsl:if>
                </p>
                <ul class="ticks">
                  <xsl:for-each select="do"><li><xsl:call-template name="box"/><span><xsl:if test="@kind = 'main'"><xsl:text>Fit: </xsl:text></xsl:if><xsl:value-of select="."/></span></li></xsl:for-each>
                </ul>
                <xsl:call-template name="blank"><xsl:with-param name="label" select="'Board, way, terminals'"/></xsl:call-template>
              </div>
            </xsl:for-each>
          </div>
          <xsl:if test="cable"><p><xsl:text>The cable: </xsl:text><xsl:value-of select="cable"/></p></xsl:if>
          <xsl:if test="core">
            <xsl:call-template name="cores"/>
          </xsl:if>
        </div>
      </xsl:for-each>
    </section>

    <xsl:if test="papers/rods">
      <section class="rods">
        <xsl:element name="{$h2}">Earth rods at the far end</xsl:element>
        <ul class="ticks">
          <xsl:for-each select="papers/rods/do"><li><xsl:call-template name="box"/><span><xsl:value-of select="."/></span></li></xsl:for-each>
        </ul>
      </section>
    </xsl:if>

    <section class="ask">
      <xsl:element name="{$h2}">Ask before you touch the supply</xsl:element>
      <p>The cut-out, its seals and the meter belong to the network operator. Nobody works on the supply end before these are filled in by hand.</p>
      <div class="blanks">
        <xsl:call-template name="blanks"><xsl:with-param name="labels" select="'Point of isolation|Who holds the key|Network operator, telephone|Customer, telephone|Emergency, nearest hospital'"/></xsl:call-template>
      </div>
      <xsl:if test="job/@customer">
        <p class="small"><xsl:text>Customer: </xsl:text><xsl:value-of select="job/@customer"/></p>
      </xsl:if>
    </section>

    <section class="cautions">
      <xsl:element name="{$h2}">For the whole job</xsl:element>
      <p class="small">The numbers are those of the flags in the diagram.</p>
      <ul>
        <xsl:for-each select="cautions/caution[not(@stretches)]">
          <li><xsl:call-template name="caution"/></li>
        </xsl:for-each>
      </ul>
    </section>

    <section class="day">
      <xsl:element name="{$h2}">The day in order</xsl:element>
      <p class="small">Stop at each hold point until it is ticked and signed.</p>
      <ol class="steps">
        <xsl:for-each select="papers/day/step">
          <li>
            <xsl:if test="@hold"><xsl:attribute name="class">hold</xsl:attribute></xsl:if>
            <xsl:call-template name="box"/>
            <div class="step-text"><xsl:value-of select="."/></div>
            <xsl:if test="@hold">
              <div class="hold-line"><strong><xsl:text>Hold: </xsl:text><xsl:value-of select="@hold"/></strong>
                <xsl:call-template name="blank"><xsl:with-param name="label" select="'time, initials'"/></xsl:call-template>
              </div>
            </xsl:if>
          </li>
        </xsl:for-each>
      </ol>
    </section>

    <section class="tools">
      <xsl:element name="{$h2}">Load the van</xsl:element>
      <p class="small">The order of the day and these tools are common practice, no source.</p>
      <ul class="ticks">
        <li><xsl:call-template name="box"/><span>Everything on the parts list</span></li>
        <xsl:for-each select="papers/tools/tool">
          <li><xsl:call-template name="box"/><span><xsl:value-of select="."/></span></li>
        </xsl:for-each>
      </ul>
    </section>

    <xsl:if test="papers/pulling">
      <section class="pulling">
        <xsl:element name="{$h2}">Pulling plan</xsl:element>
        <ul class="ticks">
          <xsl:for-each select="papers/pulling/do"><li class="{@kind}"><xsl:if test="@kind = 'main'"><xsl:call-template name="box"/></xsl:if><span><xsl:value-of select="."/></span></li></xsl:for-each>
        </ul>
      </section>
    </xsl:if>

    <section class="work">
      <xsl:element name="{$h2}">Stretch by stretch, from the supply end</xsl:element>
      <p>Height 0 is where the cable leaves the supply end: ____ m above the floor there. Bends are those that were surveyed; a turn from one stretch into the next is bent no tighter than the cable allows. What is held against a household thing is common practice, no source: the millimetres count.</p>
      <div class="cards">
      <xsl:apply-templates select="papers/work/stretch" mode="brief"/>
      </div>
    </section>

    <section class="different">
      <xsl:element name="{$h2}">What we found different from the plan</xsl:element>
      <p class="small">If the way, a length, a wall or the earthing is not as drawn: stop, write it here, ring whoever made the plan, and plan again before going on.</p>
      <div class="writing" aria-hidden="true">
        <span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span>
      </div>
          <p class="small"><xsl:text>The diagram follows, smaller than its scale. The drawing by itself, </xsl:text><xsl:value-of select="@route"/><xsl:text>.diagram.svg, prints to scale and has further sheets that explain the signs; its flags have the numbers of the cautions in this brief.</xsl:text></p>
      <xsl:if test="$paper = 'brief'"><p class="small print-only" aria-hidden="true"><xsl:call-template name="foot-words"/></p></xsl:if>
    </section>

    <section class="diagram-sheet" id="diagram">
      <xsl:element name="{$h2}">Run diagram</xsl:element>
      <xsl:call-template name="diagram"/>
    </section>
  </xsl:template>

  <xsl:template match="stretch" mode="brief">
    <xsl:variable name="name" select="@name"/>
    <xsl:variable name="here" select="concat(' ', @number, ' ')"/>
    <article class="stretch">
      <div class="stretch-head">
        <span class="number"><xsl:value-of select="@number"/></span>
        <xsl:element name="{$h3}"><xsl:value-of select="@name"/></xsl:element>
        <p class="where">
          <xsl:value-of select="@means"/><xsl:text>; </xsl:text>
          <strong><xsl:value-of select="@length"/></strong>
          <xsl:if test="@rise"><xsl:text>, </xsl:text><xsl:value-of select="@rise"/></xsl:if>
          <xsl:text>; from </xsl:text><xsl:value-of select="@from"/><xsl:text> to </xsl:text><xsl:value-of select="@to"/><xsl:text> along the way; ends at height </xsl:text><xsl:value-of select="@height"/>
        </p>
      </div>
      <ul class="ticks">
        <xsl:for-each select="do[@kind != 'mind' and @kind != 'note']">
          <li class="{@kind}"><xsl:if test="@kind != 'aside' and @kind != 'bend'"><xsl:call-template name="box"/></xsl:if><span><xsl:value-of select="."/></span></li>
        </xsl:for-each>
      </ul>
      <xsl:variable name="flags" select="/plan/cautions/caution[contains(concat(' ', @stretches, ' '), $here)]"/>
      <xsl:variable name="told" select="$flags[@where != $name]"/>
      <xsl:variable name="warned" select="/plan/warnings/warning[@where = $name and @stretch]"/>
      <xsl:if test="do[@kind = 'mind'] or $flags or $warned">
        <ul class="minds">
          <xsl:for-each select="$warned"><li><strong>Warning: </strong><xsl:value-of select="."/></li></xsl:for-each>
          <xsl:for-each select="do[@kind = 'mind']"><li><xsl:value-of select="."/></li></xsl:for-each>
          <xsl:for-each select="$flags[@where = $name]"><li><xsl:call-template name="caution"/></li></xsl:for-each>
          <xsl:if test="$told">
            <li><strong><xsl:text>Here too, flag </xsl:text><xsl:for-each select="$told"><xsl:if test="position() &gt; 1">, </xsl:if><xsl:value-of select="@number"/><xsl:if test="not(@where = following-sibling::caution[contains(concat(' ', @stretches, ' '), $here)][1]/@where)"><xsl:text> (</xsl:text><xsl:value-of select="@where"/><xsl:text>)</xsl:text></xsl:if></xsl:for-each></strong></li>
          </xsl:if>
        </ul>
      </xsl:if>
      <xsl:for-each select="do[@kind = 'note']"><p class="note"><xsl:text>From the survey: </xsl:text><xsl:value-of select="."/></p></xsl:for-each>
      <xsl:call-template name="blank"><xsl:with-param name="label" select="'Where: m from, height, side'"/></xsl:call-template>
      <xsl:call-template name="blank"><xsl:with-param name="label" select="'Found different'"/></xsl:call-template>
    </article>
  </xsl:template>

  <!-- The number is that of the flag on the diagram. -->
  <xsl:template name="caution">
    <strong><xsl:text>Flag </xsl:text><xsl:value-of select="@number"/><xsl:text>: </xsl:text></strong><xsl:value-of select="."/>
  </xsl:template>
</xsl:stylesheet>
